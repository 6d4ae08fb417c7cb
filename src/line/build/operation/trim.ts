import type { SpecOf } from '../../../scenario/stations.ts';
import { Trim } from '../../operations/trim.ts';
import type { Plan } from '../plan.ts';
import { timeOf } from './visits.ts';

export function trim(spec: SpecOf<'trim'>, plan: Plan): Trim {
  const { features, parts } = plan.line;
  const cut = [...features.values()].filter((feature) => feature.spec.madeAt === spec.name);
  return new Trim(timeOf(spec, plan), parts, cut);
}
