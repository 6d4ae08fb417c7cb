import { uniformBlocks } from '../../../kernel/distributions/uniform.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import { Mark } from '../../operations/mark.ts';
import type { Plan } from '../plan.ts';
import { timeOf } from './visits.ts';

export function mark(spec: SpecOf<'mark'>, plan: Plan): Mark {
  const { parts, streams, marks } = plan.line;
  const luck = parts.luck(uniformBlocks(streams.of(`station/${spec.name}/mark`)));
  const again = streams.of(`station/${spec.name}/mark/again`);
  const columns = { luck, again, marked: plan.marked };
  const made = new Mark(timeOf(spec, plan), parts, columns, spec.takesHold);
  marks.set(spec.name, made);
  return made;
}
