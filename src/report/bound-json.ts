import type { Recovered } from '../experiment/recovered.ts';

/** A bound as data: a policy that knows what no line can know, for reference. */
export interface BoundDocument {
  readonly policy: string;
  /** What it makes beyond the baseline under the same seed; null where only the bound was run. */
  readonly recoverable_per_h: Interval | null;
  /** Share of that which each policy makes beyond the baseline; null where there is nothing to recover. */
  readonly recovered: readonly ({ readonly policy: string } & Interval)[] | null;
}

interface Interval {
  readonly mean: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly runs: number;
}

export function boundJson(policy: string, recovered?: Recovered): BoundDocument {
  const interval = ({ value, lower, upper, runs }: Recovered['recoverable']): Interval => ({
    ...{ mean: value, lower, upper, runs },
  });
  return {
    policy,
    recoverable_per_h: recovered ? interval(recovered.recoverable) : null,
    recovered: recovered?.shares?.map(({ policy, share }) => ({ policy, ...interval(share) })) ?? null,
  };
}
