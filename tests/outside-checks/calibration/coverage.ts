import type { Estimate } from '../../../src/statistics/estimate.ts';
import { acceptanceProbability } from '../../../src/statistics/operating-characteristic.ts';
import { holds, LEVEL, times } from './calibration.ts';

export type Proportion = (hits: number, of: number, level: number) => Estimate;

/** How often the interval of the hits in `of` trials of chance `p` holds it, summed over the binomial law. */
export function coverage(interval: Proportion, of: number, p: number): number {
  const upTo = (k: number) => (k < 0 ? 0 : acceptanceProbability(of, k, p));
  const chance = (hits: number) => upTo(hits) - upTo(hits - 1);
  return times(of + 1, (hits) => (holds(interval(hits, of, LEVEL), p) ? chance(hits) : 0)).reduce(
    (sum, one) => sum + one,
    0,
  );
}
