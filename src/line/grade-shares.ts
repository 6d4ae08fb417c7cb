import { Streams } from '../kernel/streams.ts';
import type { ByGrade } from '../scenario/grades.ts';
import type { SpecOf } from '../scenario/stations.ts';
import { GRADES } from '../standards/mark-grade.ts';
import { markGrades } from './mark-quality.ts';

/** Marks drawn to estimate their grades: a standard error of 0.25 % at most. */
const DRAWN = 40_000;

/**
 * The shares of the grades among the marks of a station that took, by place in `GRADES`. Where quality decides them
 * they are estimated from a fixed sample, since the scans of a mark depend on each other.
 */
export function gradeSharesOf({ grades, quality }: SpecOf<'mark'>): ByGrade {
  if (quality === undefined) return GRADES.map((_, i) => grades?.[i] ?? (i === 0 ? 1 : 0));
  const draw = markGrades(quality, new Streams(1), 'shares');
  const found = GRADES.map(() => 0);
  for (let i = 0; i < DRAWN; i++) found[draw()]!++;
  return found.map((times) => times / DRAWN);
}
