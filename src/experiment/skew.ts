import type { MeasureKey } from '../line/measures.ts';
import { MEASURES } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import { type Skewness, skewnessOf } from '../statistics/skewness.ts';
import type { Twins } from './twins.ts';

/** How skewed the runs of a policy are in a measure, which tells whether the intervals of means can be trusted. */
export interface Skew {
  readonly measure: { readonly key: string; readonly name: string };
  readonly policy: string;
  /** Of the values behind the mean. */
  readonly mean: Skewness;
  /** Of the paired differences to the first policy; null for that policy itself, and where no seed gives both values. */
  readonly difference: Skewness | null;
}

/** Differences of values under the same seed, without those of which one is missing. */
const differences = (own: readonly (number | null)[], base: readonly (number | null)[]): number[] =>
  own.flatMap((value, i) => {
    const other = base[i] ?? null;
    return value === null || other === null ? [] : [value - other];
  });

/**
 * The skewness behind every mean and every difference of a comparison.
 * @param byPolicy outcomes under the same seeds, in order of seed; the first policy is the one the others are compared with
 */
export function skewsOf(byPolicy: ReadonlyMap<string, readonly Outcome[]>): Skew[] {
  const policies = [...byPolicy.keys()];
  return MEASURES.flatMap((measure) => {
    const values = (policy: string, key: MeasureKey) =>
      byPolicy.get(policy)!.map(({ measures }) => measures[key]);
    const base = values(policies[0]!, measure.key);
    return policies.flatMap((policy, i) => {
      const own = values(policy, measure.key);
      const given = own.filter((value) => value !== null);
      if (given.length === 0) return [];
      const paired = i === 0 ? [] : differences(own, base);
      const difference = paired.length > 0 ? skewnessOf(paired) : null;
      return [{ measure, policy, mean: skewnessOf(given), difference }];
    });
  });
}

/** The same of the means against undisturbed twins. */
export function twinSkews({ measures, runs }: Twins): Skew[] {
  return measures.flatMap(({ measure, rows }) =>
    rows.map(({ policy }) => {
      const own = runs.flatMap((run) =>
        run.policy === policy ? (run.values[measure.key as keyof typeof run.values] ?? []) : [],
      );
      return { measure, policy, mean: skewnessOf(own), difference: null };
    }),
  );
}
