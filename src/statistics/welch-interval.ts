import { mean, sampleVariance } from 'simple-statistics';
import type { Estimate } from './estimate.ts';
import { studentQuantile } from './mean-interval.ts';

/** The standard error of a difference of two means, and the degrees of freedom it is worth. */
export interface DifferenceError {
  readonly error: number;
  readonly freedom: number;
}

/**
 * For two independent samples by their variances and sizes, 2 or more each. B. L. Welch (1938), Biometrika 29, 350-362, and
 * F. E. Satterthwaite (1946), Biometrics Bulletin 2, 110-114.
 */
export function welchError(
  variances: readonly [number, number],
  sizes: readonly [number, number],
): DifferenceError {
  const [one, other] = [variances[0] / sizes[0], variances[1] / sizes[1]];
  const square = one + other;
  return {
    error: Math.sqrt(square),
    // Without any spread it does not matter what the interval of no width is worth.
    freedom: square > 0 ? square ** 2 / (one ** 2 / (sizes[0] - 1) + other ** 2 / (sizes[1] - 1)) : 1,
  };
}

/**
 * The mean of the first sample less that of the second, for samples that are independent of each other. Runs of two policies
 * under the same seeds are not: they are compared by paired differences (`meanInterval`). Fewer than two values in either
 * give no interval.
 */
export function welchInterval(
  first: readonly number[],
  second: readonly number[],
  level: number,
  comparisons = 1,
): Estimate {
  const [ones, others] = [[...first], [...second]];
  const value = mean(ones) - mean(others);
  const runs = Math.min(ones.length, others.length);
  if (runs < 2) return { value, lower: null, upper: null, level, runs, method: 'one run, no interval' };
  const { error, freedom } = welchError(
    [sampleVariance(ones), sampleVariance(others)],
    [ones.length, others.length],
  );
  const half = error && error * studentQuantile(1 - (1 - level) / (2 * comparisons), freedom);
  const method = comparisons > 1 ? `Welch, Bonferroni for ${comparisons}` : 'Welch';
  return { value, lower: value - half, upper: value + half, level, runs, method };
}
