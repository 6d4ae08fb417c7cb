import type { FoundCapability, Outcome } from '../line/outcome.ts';
import { CAPABILITIES } from '../statistics/capability.ts';
import type { Estimate } from '../statistics/estimate.ts';
import { meanInterval } from '../statistics/mean-interval.ts';

/** What is told of a feature's readings, each as the mean over the runs that give it. */
export const CAPABILITY_KEYS = ['readings', 'mean', 'sdWithin', 'sdOverall', ...CAPABILITIES] as const;
export type CapabilityKey = (typeof CAPABILITY_KEYS)[number];

/** A feature as a gauge reads it, over many runs. */
export interface CapabilityEstimate {
  readonly gauge: string;
  readonly feature: string;
  /** Null where no run gives a value. Lengths in mm. */
  readonly estimates: Readonly<Record<CapabilityKey, Estimate | null>>;
}

function estimate(found: readonly FoundCapability[], key: CapabilityKey, level: number): Estimate | null {
  const values = found.map((one) => one[key]).filter((value) => value !== null);
  return values.length > 0 ? meanInterval(values, level) : null;
}

/** The capabilities of the runs of one policy, at least one run: means over runs with their t intervals. */
export function capabilitiesOf(outcomes: readonly Outcome[], level: number): CapabilityEstimate[] {
  return outcomes[0]!.capabilities.map(({ gauge, feature }, i) => {
    const found = outcomes.map(({ capabilities }) => capabilities[i]!);
    const estimates = Object.fromEntries(
      CAPABILITY_KEYS.map((key) => [key, estimate(found, key, level)]),
    ) as Record<CapabilityKey, Estimate | null>;
    return { gauge, feature, estimates };
  });
}
