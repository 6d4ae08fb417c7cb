import { studentQuantile } from './mean-interval.ts';
import { normalPoint } from './normal.ts';

/**
 * How many values are needed. The first three are the textbook formulas for a known standard deviation, e.g. A. M. Law,
 * Simulation Modeling and Analysis, chapter 9, and D. C. Montgomery, Design and Analysis of Experiments, chapter 2.
 */

/** For an interval of a mean within +- half of it. */
export const sizeForMean = (sd: number, half: number, level: number): number =>
  Math.ceil(((normalPoint((1 + level) / 2) * sd) / half) ** 2);

/** For an interval of a proportion near `share` within +- half of it. */
export const sizeForProportion = (share: number, half: number, level: number): number =>
  sizeForMean(Math.sqrt(share * (1 - share)), half, level);

/** In each of two independent samples, so that a difference of their means is found with chance `power` by a test at `level`. */
export const sizeForDifference = (sd: number, difference: number, level: number, power: number): number =>
  Math.ceil(2 * ((sd / difference) * (normalPoint((1 + level) / 2) + normalPoint(power))) ** 2);

/**
 * The fewest runs, 2 or more, whose t interval is within +- half of the mean, were their standard deviation `sd`. Infinite
 * where `half` is not above 0 and there is some spread.
 */
export function runsForHalfWidth(sd: number, half: number, level: number, comparisons = 1): number {
  if (sd === 0) return 2;
  if (!(half > 0)) return Number.POSITIVE_INFINITY;
  const p = 1 - (1 - level) / (2 * comparisons);
  // The normal quantile is below Student's, so that the number looked for is not below this one.
  let runs = Math.max(2, Math.ceil(((normalPoint(p) * sd) / half) ** 2));
  while (runs < Number.MAX_SAFE_INTEGER && (studentQuantile(p, runs - 1) * sd) / Math.sqrt(runs) > half)
    runs += Math.max(1, Math.floor(runs / 1e6));
  return runs;
}
