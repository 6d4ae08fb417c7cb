import type { SpecOf } from '../../../scenario/stations.ts';
import type { Operation } from '../../machine.ts';
import { Batch } from '../../operations/batch.ts';
import { Source } from '../../operations/source.ts';
import { Work } from '../../operations/work.ts';
import type { VisitTime } from '../../visit-time.ts';
import type { Plan } from '../plan.ts';
import { trapsOf } from '../traps.ts';
import { counted, sourceParts } from './source.ts';
import { timeOf } from './visits.ts';

function batch(spec: SpecOf<'work'>, time: VisitTime, { line, scenario }: Plan): Batch {
  const made = new Batch(time, spec.batch);
  const circling = scenario.carriers.filter((it) => trapsOf(scenario.stations, it).includes(spec.name));
  const carriers = circling.map(({ name }) => line.carriers.get(name)!);
  const trap = { name: spec.name, inbox: line.stations.get(spec.name)!.inbox!, batch: spec.batch };
  for (const each of carriers) each.traps.push(trap);
  if (carriers.length > 0) {
    made.onShort = () => {
      for (const each of carriers) each.refuseStandstill();
    };
  }
  return made;
}

export function work(spec: SpecOf<'work'>, plan: Plan): Operation {
  if (spec.takes !== undefined)
    return counted(new Source(sourceParts(spec, spec.takes, plan)), spec.takes, plan);
  const time = timeOf(spec, plan);
  return spec.batch > 1 ? batch(spec, time, plan) : new Work(time);
}
