import type { ExplainedReader } from '../../experiment/explained/reader.ts';
import type { ExplainedMarks } from '../../experiment/explanation.ts';
import { GRADES } from '../../standards/mark-grade.ts';
import { percent } from '../format.ts';
import { shareRow, title } from './rows.ts';

export function markLines({ station, takesHold, grades }: ExplainedMarks, width: number): string[] {
  const shares = GRADES.flatMap((grade, i) => (grades[i]! > 0 ? [`${grade} ${percent(grades[i]!)} %`] : []));
  return title(
    `marks of ${station}: ${percent(takesHold)} % take; of these grade ${shares.join(', ')}`,
    width,
  );
}

export const readerLines = ({ station, unread }: ExplainedReader, width: number): string[] => [
  ...title(`in front of ${station}`, width),
  shareRow('not read', unread, width),
];
