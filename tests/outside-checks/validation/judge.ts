import type { Estimate } from '../../../src/statistics/estimate.ts';
import { meanInterval } from '../../../src/statistics/mean-interval.ts';
import type { Value } from '../cases/case.ts';

/** Coverage of every interval of the validation. */
const LEVEL = 0.99;
/** Rounding of sums over a run, for values that nothing random enters. */
const ROUNDING = 1e-9;

/** What the runs say of one value. */
export interface Judgement {
  readonly estimate: Estimate;
  /** Half width of the interval over the expected value. */
  readonly sharpness: number;
  /** Whether the expected value lies within the interval. */
  readonly hit: boolean;
  /** Whether the interval is as narrow as the value asks for. */
  readonly sharp: boolean;
}

/** Judges a value by what each run gave for it. */
export function judge({ expected, exact, sharp }: Value, given: readonly number[]): Judgement {
  const estimate = meanInterval(given, LEVEL);
  const half = (estimate.upper! - estimate.lower!) / 2;
  const sharpness = half / Math.abs(expected);
  const away = Math.abs(estimate.value - expected);
  return {
    estimate,
    sharpness,
    hit: away <= (exact ? ROUNDING * Math.abs(expected) : half),
    // Runs that differ in nothing although chance plays a part were not independent.
    sharp: exact ? sharpness <= ROUNDING : sharpness > 0 && sharpness <= sharp,
  };
}
