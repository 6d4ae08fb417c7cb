import type { Outcome } from '../line/outcome.ts';
import type { Estimate } from '../statistics/estimate.ts';
import { meanInterval } from '../statistics/mean-interval.ts';
import { ratioOfMeans } from '../statistics/ratio-interval.ts';
import { LEVEL } from './comparison.ts';

/** How much of what could be recovered each policy recovered, by output. */
export interface Recovered {
  readonly bound: string;
  readonly baseline: string;
  /** What the bound makes beyond the baseline under the same seed, good assemblies per hour. */
  readonly recoverable: Estimate;
  /**
   * What a policy makes beyond the baseline over what the bound does, as a ratio of means over the seeds; each interval by
   * itself at LEVEL. Null where there is nothing to recover: where `recoverable` is not wholly above zero.
   */
  readonly shares: readonly { readonly policy: string; readonly share: Estimate }[] | null;
}

/**
 * @param policies with the baseline first, and the bound among the others
 * @param outcomes every policy under the same seeds, in order of seed
 */
export function recoveredOf(
  policies: readonly string[],
  outcomes: readonly Outcome[],
  bound: string,
): Recovered {
  const baseline = policies[0]!;
  const output = (name: string) =>
    outcomes.filter(({ policy }) => policy === name).map(({ measures }) => measures.throughput_per_h ?? 0);
  const base = output(baseline);
  const beyond = (name: string) => output(name).map((value, i) => value - base[i]!);
  const most = beyond(bound);
  const recoverable = meanInterval(most, LEVEL);
  const { value, lower } = recoverable;
  if ((lower ?? value) <= 0) return { bound, baseline, recoverable, shares: null };
  const shares = policies.slice(1).flatMap((policy) => {
    const share = policy === bound ? null : ratioOfMeans(beyond(policy), most, LEVEL);
    return share === null ? [] : [{ policy, share }];
  });
  return { bound, baseline, recoverable, shares };
}
