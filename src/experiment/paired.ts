import type { MeasureKey } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import { type Criterion, type Decision, decide } from '../statistics/comparing/decision.ts';
import type { Estimate } from '../statistics/estimate.ts';

/** What may be said of a difference; `better` and `worse` mean by more than is worth having. */
export type Verdict = Decision['word'];

/** What the paired differences of two policies allow to be said. */
export interface Judged {
  /** Null where no seed gives both a value. */
  readonly difference: Estimate | null;
  /** Null where there is no interval. */
  readonly verdict: Verdict | null;
  /** On which side of zero the whole interval lies, be it worth having or not; null where it holds zero. */
  readonly surely: Decision['surely'];
  /** About how many more runs would decide what is undecided; null where that is decided or cannot be told. */
  readonly more: number | null;
}

/** Where there is nothing to judge. */
export const NOT_JUDGED: Judged = { difference: null, verdict: null, surely: null, more: null };

/** Each one's own value less the other's, seed by seed, where both have one. */
export function pairedDifferences(
  own: readonly Outcome[],
  other: readonly Outcome[],
  key: MeasureKey,
): number[] {
  return own.flatMap(({ measures }, i) => {
    const [one, two] = [measures[key], other[i]!.measures[key]];
    return one === null || two === null ? [] : [one - two];
  });
}

export function judge(differences: readonly number[], criterion: Criterion): Judged {
  if (differences.length === 0) return NOT_JUDGED;
  const { word, surely, more, difference } = decide(differences, criterion);
  return { difference, verdict: difference.lower === null ? null : word, surely, more };
}
