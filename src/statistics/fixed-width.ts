import { mean, sampleVariance } from 'simple-statistics';
import type { Estimate } from './estimate.ts';
import { studentQuantile } from './mean-interval.ts';

/**
 * How many runs are needed in all so that the mean over them lies within +- half of the true one with probability `level`,
 * by the spread of a first stage of 2 or more runs alone. It holds exactly for normal values, while looking after each run whether
 * the interval is narrow enough by now covers less often than it says. C. Stein (1945), A two-sample test for a linear
 * hypothesis whose power is independent of the variance, Ann. Math. Stat. 16, 243-258.
 * @param half above 0
 * @param comparisons how many such intervals are to hold together, by Bonferroni's inequality
 */
export function fixedWidthTotal(
  first: readonly number[],
  half: number,
  level: number,
  comparisons = 1,
): number {
  const n = first.length;
  if (n < 2) throw new RangeError('the spread of a first stage needs 2 runs or more');
  if (!(half > 0)) throw new RangeError(`a half width of ${half}; it must be above 0`);
  const t = studentQuantile(1 - (1 - level) / (2 * comparisons), n - 1);
  return Math.max(n, Math.ceil((t ** 2 * sampleVariance([...first])) / half ** 2));
}

/** The interval of that width; without ends as long as there are fewer values than `total`. */
export function fixedWidthInterval(
  values: readonly number[],
  total: number,
  half: number,
  level: number,
): Estimate {
  const [value, runs] = [mean([...values]), values.length];
  if (runs < total) return { value, lower: null, upper: null, level, runs, method: 'Stein, too few runs' };
  return { value, lower: value - half, upper: value + half, level, runs, method: 'Stein, two stages' };
}
