import type { Estimate } from './estimate.ts';
import { meanInterval } from './mean-interval.ts';

const sum = (values: readonly number[]): number => values.reduce((total, x) => total + x, 0);

/**
 * The mean of some values over the mean of others that belong to them one by one, by the jackknife, which takes off most of the bias that a
 * ratio of means has: Student's t on the pseudo-values. It needs no normal means, unlike Fieller's interval
 * (`ratioOfMeans`), but many runs. R. G. Miller (1974), The jackknife: a review, Biometrika 61, 1-15. Null where the divisor is zero; no interval of
 * one run, nor where all of the divisor comes from one.
 * @param above at least one value, and as many `below`
 */
export function jackknifeRatio(
  above: readonly number[],
  below: readonly number[],
  level: number,
  comparisons = 1,
): Estimate | null {
  const runs = above.length;
  if (runs === 0 || below.length !== runs)
    throw new RangeError('a ratio needs at least one value, and as many of either kind');
  const [x, y] = [sum(above), sum(below)];
  if (y === 0) return null;
  const value = x / y;
  const none = { value, lower: null, upper: null, level, runs };
  if (runs === 1) return { ...none, method: 'one run, no interval' };
  const without = above.map((own, i) => (x - own) / (y - below[i]!));
  if (!without.every(Number.isFinite)) return { ...none, method: 'jackknife, too few runs' };
  const found = meanInterval(
    without.map((ratio) => runs * value - (runs - 1) * ratio),
    level,
    comparisons,
  );
  return { ...found, method: `jackknife, ${found.method}` };
}
