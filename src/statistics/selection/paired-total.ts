import { sampleVariance } from 'simple-statistics';
import { studentQuantile } from '../mean-interval.ts';
import { checkSelection } from './constant.ts';

/**
 * How many runs of every system are needed in all so that the one with the best mean is the best with probability
 * `confidence`, if it leads by `worth` or more, under common random numbers: two stages by Bonferroni's inequality over
 * the variances of paired differences. G. M. Clark and W. Yang (1986), A Bonferroni selection procedure when using common
 * random numbers with unknown variances, Proc. Winter Simulation Conf., 313-315 (from memory).
 * @param first values of the first stage by system and run, under the same seeds in the same order
 */
export function pairedTotal(
  first: readonly (readonly number[])[],
  confidence: number,
  worth: number,
): number {
  const [k, n] = [first.length, first[0]?.length ?? 0];
  checkSelection(k, n, confidence);
  const t = studentQuantile(1 - (1 - confidence) / (k - 1), n - 1);
  let most = n;
  for (let i = 1; i < k; i++) {
    for (let j = 0; j < i; j++) {
      const variance = sampleVariance(first[i]!.map((x, run) => x - first[j]![run]!));
      most = Math.max(most, Math.ceil((t ** 2 * variance) / worth ** 2));
    }
  }
  return most;
}
