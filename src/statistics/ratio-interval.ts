import { mean, sampleCovariance, sampleVariance } from 'simple-statistics';
import type { Estimate } from './estimate.ts';
import { studentQuantile } from './mean-interval.ts';

/**
 * The mean of some values over the mean of others that belong to them one by one, with its interval by Fieller's theorem:
 * all ratios r for which the t interval of the mean of `above - r * below` holds zero. That is an interval with two ends
 * only where the t interval of the mean of `below` lies above or below zero; else nothing is known of the ratio, and
 * the answer is null. One pair gives a ratio without an interval, unless its divisor is zero. Normal means are assumed.
 * Source: E. C. Fieller, Some problems in interval estimation, Journal of the Royal Statistical Society B 16 (1954), 175-185.
 * @param above at least one value, and as many `below`
 */
export function ratioOfMeans(
  above: readonly number[],
  below: readonly number[],
  level: number,
): Estimate | null {
  const runs = above.length;
  if (runs === 0 || below.length !== runs)
    throw new RangeError('a ratio needs at least one value, and as many of either kind');
  const [x, y] = [mean([...above]), mean([...below])];
  if (y === 0) return null;
  const value = x / y;
  if (runs === 1) return { value, lower: null, upper: null, level, runs, method: 'one run, no interval' };
  const t = studentQuantile(1 - (1 - level) / 2, runs - 1);
  const off = (spread: number) => (t * t * spread) / runs;
  // The ends are the roots of a r^2 - 2 b r + c.
  const a = y * y - off(sampleVariance([...below]));
  const b = x * y - off(sampleCovariance([...above], [...below]));
  const c = x * x - off(sampleVariance([...above]));
  if (a <= 0) return null;
  const root = Math.sqrt(Math.max(0, b * b - a * c));
  return { value, lower: (b - root) / a, upper: (b + root) / a, level, runs, method: 'Fieller' };
}
