import { mean } from 'simple-statistics';

/** What the skewness of values says of a t interval of their mean. */
export interface Skewness {
  /** Fisher's G1: the third central moment in standard deviations; 0 for values without spread. */
  readonly value: number;
  /** How many runs the rule asks for at this skewness. */
  readonly runs: number;
  /** Whether there are fewer runs than that, and the skewness is more than chance would give normal values. */
  readonly doubtful: boolean;
}

/** W. G. Cochran's rule n > 25 G1^2: a 95 % interval then misses at most 6 times in 100; Sampling Techniques, section 2.15 (from memory). */
const PER_SQUARE = 25;
/** A skewness within so many of its standard errors may be chance. */
const CHANCE = 2;
/** A standard deviation no larger than this, of the largest value, is what rounding leaves of none. */
const ROUNDING = 1e-12;

/**
 * Whether the t interval of a mean is doubtful. Few normal values look skewed by chance, so the rule of Cochran speaks only
 * where the skewness is beyond twice its standard error for normal values, sqrt(6 (n - 2) / ((n + 1) (n + 3))) (R. A. Fisher
 * 1930). Fewer than 4 values, which tell nothing of it, are never called doubtful for it.
 */
export function skewnessOf(values: readonly number[]): Skewness {
  const n = values.length;
  const middle = n > 0 ? mean([...values]) : 0;
  const moment = (power: number) => values.reduce((sum, x) => sum + (x - middle) ** power, 0) / n;
  const variance = n > 0 ? moment(2) : 0;
  const rounding = ROUNDING * values.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const value = Math.sqrt(variance) > rounding ? moment(3) / variance ** 1.5 : 0;
  const runs = Math.floor(PER_SQUARE * value ** 2) + 1;
  const byChance = CHANCE * Math.sqrt((6 * (n - 2)) / ((n + 1) * (n + 3)));
  return { value, runs, doubtful: n > 3 && n < runs && Math.abs(value) > byChance };
}
