import { sampleStandardDeviation } from 'simple-statistics';
import type { Estimate } from '../estimate.ts';
import { meanInterval } from '../mean-interval.ts';
import { runsForHalfWidth } from '../sample-size.ts';
import type { Better } from './better.ts';

/** What is said of a difference. `better` and `worse` mean by more than is worth having. */
type Word = 'better' | 'worse' | 'no difference worth having' | 'undecided';

export interface Decision {
  readonly word: Word;
  /** Which side of zero the whole interval lies on, be it worth having or not; null where it holds zero. */
  readonly surely: 'better' | 'worse' | null;
  /**
   * About how many more runs would decide it, were mean and spread what they seem; null where it is decided, where one run
   * tells nothing of the spread, and where the difference seems to be just what is worth having.
   */
  readonly more: number | null;
  readonly difference: Estimate;
}

export interface Criterion {
  readonly better: Better;
  /** A difference of at most this much is not worth having; 0 or more, in the unit of the measure. */
  readonly worth: number;
  readonly level: number;
  /** How many intervals are to hold together, by Bonferroni's inequality. */
  readonly comparisons?: number;
}

/**
 * Decides by paired differences, each one's own less the other's under one seed: their interval lies beyond what is worth
 * having, or wholly within it, or neither is so. Every word other than `undecided` is wrong at most as seldom as the interval.
 * An interval wholly within +- worth is the two one-sided tests of D. J. Schuirmann (1987), J. Pharmacokinet. Biopharm. 15, 657-680, at half
 * the usual error each.
 */
export function decide(
  differences: readonly number[],
  { better, worth, level, comparisons = 1 }: Criterion,
): Decision {
  const difference = meanInterval(differences, level, comparisons);
  const { value, lower, upper, runs } = difference;
  if (lower === null || upper === null) return { word: 'undecided', surely: null, more: null, difference };
  const [low, high] = better === 'higher' ? [lower, upper] : [-upper, -lower];
  const surely = low > 0 ? 'better' : high < 0 ? 'worse' : null;
  if (low > worth) return { word: 'better', surely, more: null, difference };
  if (high < -worth) return { word: 'worse', surely, more: null, difference };
  if (low >= -worth && high <= worth)
    return { word: 'no difference worth having', surely, more: null, difference };
  const sd = sampleStandardDeviation([...differences]);
  const needed = runsForHalfWidth(sd, Math.abs(Math.abs(value) - worth), level, comparisons);
  const more = Number.isSafeInteger(needed) ? Math.max(1, needed - runs) : null;
  return { word: 'undecided', surely, more, difference };
}
