import jstat from 'jstat';
import { mean, sampleVariance } from 'simple-statistics';

/**
 * How likely changes as large as these are where what is changed does nothing: the F test of the means of groups against zero, with the
 * variance within groups taken as one, as in the analysis of variance (D. C. Montgomery, Design and Analysis of Experiments,
 * chapter 3, here about a mean that is known to be 0).
 * @param groups by trajectory and seed, the change that one step made
 * @returns null where no group has two values; 0 or 1 where nothing varies within groups
 */
export function chanceByLuck(groups: readonly (readonly number[])[]): number | null {
  const freedom = groups.reduce((sum, own) => sum + own.length - 1, 0);
  if (freedom < 1) return null;
  const between = groups.reduce((sum, own) => sum + own.length * mean([...own]) ** 2, 0) / groups.length;
  const within =
    groups.reduce((sum, own) => sum + (own.length > 1 ? (own.length - 1) * sampleVariance([...own]) : 0), 0) /
    freedom;
  if (within === 0) return between > 0 ? 0 : 1;
  return 1 - jstat.jStat.centralF.cdf(between / within, groups.length, freedom);
}
