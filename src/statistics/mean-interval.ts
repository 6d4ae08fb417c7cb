import jstat from 'jstat';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { Estimate } from './estimate.ts';

/** The quantile of Student's t distribution with `degreesOfFreedom` (above 0) at `p`, 0 < p < 1. */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  return jstat.jStat.studentt.inv(p, degreesOfFreedom);
}

/**
 * Two-sided t interval for the mean of independent values, at least one. It assumes means of runs that are
 * near normal; source: any statistics text, e.g. A. M. Law, Simulation Modeling and Analysis, chapter 4.
 * @param comparisons how many intervals are to hold together: each is widened by Bonferroni's inequality
 */
export function meanInterval(values: readonly number[], level: number, comparisons = 1): Estimate {
  const runs = values.length;
  if (runs === 0) throw new RangeError('a mean needs at least one value');
  const value = mean([...values]);
  const method = comparisons > 1 ? `t, Bonferroni for ${comparisons}` : 't';
  if (runs === 1) return { value, lower: null, upper: null, level, runs, method: 'one run, no interval' };
  const half =
    (studentQuantile(1 - (1 - level) / (2 * comparisons), runs - 1) * sampleStandardDeviation([...values])) /
    Math.sqrt(runs);
  return { value, lower: value - half, upper: value + half, level, runs, method };
}
