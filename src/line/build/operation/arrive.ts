import { samplerOf } from '../../../kernel/distributions/index.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import { Arrive } from '../../operations/arrive.ts';
import type { Plan } from '../plan.ts';

export function arrive(spec: SpecOf<'arrive'>, plan: Plan): Arrive {
  const { calendar, parts, tally, streams } = plan.line;
  const between = samplerOf(spec.cycle, streams.of(`station/${spec.name}/cycle`));
  const made = new Arrive({ calendar, parts, tally, between });
  plan.line.starts.push(() => made.came);
  return made;
}
