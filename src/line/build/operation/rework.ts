import { standardNormal } from '../../../kernel/distributions/normal.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import { Rework } from '../../operations/rework.ts';
import type { Plan } from '../plan.ts';
import { timeOf } from './visits.ts';

export function rework(spec: SpecOf<'rework'>, plan: Plan): Rework {
  const { parts, streams, features } = plan.line;
  const corrections = spec.corrects.map(({ name, removes, ownSd }) => ({
    feature: features.get(name)!,
    removes,
    ownSd,
    z: standardNormal(streams.of(`station/${spec.name}/rework/${name}`)),
  }));
  return new Rework(timeOf(spec, plan), parts, corrections);
}
