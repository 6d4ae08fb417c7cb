import type { SpecOf } from '../../../scenario/stations.ts';
import type { Operation } from '../../machine.ts';
import { Batch } from '../../operations/batch.ts';
import { Source } from '../../operations/source.ts';
import { Work } from '../../operations/work.ts';
import type { Plan } from '../plan.ts';
import { shortOf } from '../traps.ts';
import { counted, sourceParts } from './source.ts';
import { timeOf } from './visits.ts';

export function work(spec: SpecOf<'work'>, plan: Plan): Operation {
  if (spec.takes !== undefined) return counted(new Source(sourceParts(spec, spec.takes, plan)), spec, plan);
  const time = timeOf(spec, plan);
  return spec.batch > 1 ? new Batch(time, spec.batch, shortOf(spec, plan)) : new Work(time);
}
