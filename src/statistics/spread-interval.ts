import type { Estimate } from './estimate.ts';
import { meanInterval } from './mean-interval.ts';

/** What one run says of a value: the mean over it, and the mean square deviation from that mean. */
export interface RunSpread {
  readonly mean: number;
  readonly variance: number;
}

/**
 * The standard deviation of a value over all runs, with its interval. What differs from run to run, such as a
 * delivery that lasts a whole run, counts in full: the variance is that within runs plus that between their means,
 * unbiased for runs that are independent. The interval is Student's t on the runs' shares of it, on a log scale, since
 * a variance is skewed and never negative (delta method; e.g. A. M. Law, Simulation Modeling and Analysis, on means
 * of runs). One run gives no interval.
 */
export function spreadInterval(runs: readonly RunSpread[], level: number, comparisons = 1): Estimate {
  const n = runs.length;
  const middle = meanInterval(
    runs.map(({ mean }) => mean),
    level,
  ).value;
  const between = n > 1 ? n / (n - 1) : 0;
  const squares = runs.map(({ mean, variance }) => variance + between * (mean - middle) ** 2);
  const { value, upper, method } = meanInterval(squares, level, comparisons);
  const known = { value: Math.sqrt(value), level, runs: n, method };
  if (upper === null) return { ...known, lower: null, upper: null };
  if (value === 0) return { ...known, lower: 0, upper: 0 };
  const stretch = Math.exp((upper - value) / value / 2);
  return { ...known, lower: known.value / stretch, upper: known.value * stretch };
}
