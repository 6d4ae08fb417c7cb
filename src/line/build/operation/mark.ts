import { uniformBlocks } from '../../../kernel/distributions/uniform.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import { gradeSharesOf } from '../../grade-shares.ts';
import { type Grading, Mark } from '../../operations/mark.ts';
import type { Plan } from '../plan.ts';
import { timeOf } from './visits.ts';

type MarkSpec = SpecOf<'mark'> & { readonly name: string };

/** How the marks of the station come by their grades; null where all marks of the line are alike. */
function gradingOf(spec: MarkSpec, { line, grade }: Plan): Grading | null {
  if (grade === null) return null;
  const { parts, streams } = line;
  const purpose = `station/${spec.name}/grade`;
  const luck = parts.luck(uniformBlocks(streams.of(purpose)));
  return { grade, luck, again: streams.of(`${purpose}/again`), shares: gradeSharesOf(spec) };
}

export function mark(spec: MarkSpec, plan: Plan): Mark {
  const { parts, streams, marks, features, settings } = plan.line;
  const luck = parts.luck(uniformBlocks(streams.of(`station/${spec.name}/mark`)));
  const again = streams.of(`station/${spec.name}/mark/again`);
  const history = [
    ...[...features.values()].map(({ reading }) => reading),
    ...[...settings.values()].map(({ remembered }) => remembered),
  ];
  const columns = { luck, again, marked: plan.marked, history };
  const made = new Mark(timeOf(spec, plan), parts, columns, spec.takesHold, gradingOf(spec, plan));
  marks.set(spec.name, made);
  return made;
}
