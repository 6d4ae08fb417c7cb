import { MEASURES, type Measure, type MeasureKey } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import { type Estimate, possible } from '../statistics/estimate.ts';
import { jackknifeRatio } from '../statistics/jackknife-ratio.ts';
import { quantileInterval } from '../statistics/quantile-interval.ts';
import { LEVEL } from './comparison.ts';
import { type Skew, skewsOf } from './skew.ts';

/** The share of runs that are worse than what `bad` tells. */
export const BAD_SHARE = 0.1;

/** What the runs of one policy say of a measure beyond their mean. Each interval holds by itself at LEVEL. */
interface SpreadRow {
  readonly policy: string;
  /** What the runs gave, the smallest first. */
  readonly values: readonly number[];
  readonly median: Estimate;
  /** One run in ten is worse than this. */
  readonly bad: Estimate;
  /** Of a ratio, all that is above its line over all that is below it, in all runs; null of what is none. */
  readonly overAll: Estimate | null;
}

export interface MeasureSpread {
  readonly measure: Measure & { readonly key: MeasureKey };
  /** Without the policies of which no run gives a value. */
  readonly rows: readonly SpreadRow[];
}

/** How the runs of each policy lie, and how far this lets the intervals of their means be trusted. */
export interface Spread {
  readonly seeds: number;
  /** Only the measures that some run gives a value for. */
  readonly measures: readonly MeasureSpread[];
  readonly skews: readonly Skew[];
}

/** The quantile that a bad run lies beyond. */
const badQuantile = (better: Measure['better']): number => (better === 'higher' ? BAD_SHARE : 1 - BAD_SHARE);

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/**
 * The totals of all runs over each other, with the interval of the jackknife. Its own middle, less biased but no ratio of
 * anything that was counted, may lie beyond what a ratio can be. Runs with nothing below the line count with nothing.
 */
function overAll(measure: MeasureSpread['measure'], own: readonly Outcome[]): Estimate | null {
  const totals = own.flatMap((outcome) => {
    const found = outcome.totals[measure.key];
    return found ? [found] : [];
  });
  if (totals.length === 0) return null;
  const [above, below] = [totals.map(([part]) => part), totals.map(([, whole]) => whole)];
  const found = jackknifeRatio(above, below, LEVEL);
  if (found === null) return null;
  const value = sum(above) / sum(below);
  const { lower, upper } = possible(found, { least: 0, most: measure.most });
  if (lower === null || upper === null) return { ...found, value };
  return { ...found, value, lower: Math.min(value, lower), upper: Math.max(value, upper) };
}

/**
 * How the runs lie.
 * @param policies names in the scenario's order; the first is the one the others are compared with
 * @param outcomes every policy under the same seeds, in order of seed
 */
export function spreadOf(policies: readonly string[], outcomes: readonly Outcome[]): Spread {
  const byPolicy = new Map(policies.map((name) => [name, outcomes.filter(({ policy }) => policy === name)]));
  const rowsOf = (measure: MeasureSpread['measure']): SpreadRow[] =>
    policies.flatMap((policy) => {
      const own = byPolicy.get(policy)!;
      const values = own.map(({ measures }) => measures[measure.key]).filter((value) => value !== null);
      if (values.length === 0) return [];
      const median = quantileInterval(values, 0.5, LEVEL);
      const bad = quantileInterval(values, badQuantile(measure.better), LEVEL);
      return [
        { policy, values: [...values].sort((a, b) => a - b), median, bad, overAll: overAll(measure, own) },
      ];
    });
  return {
    seeds: byPolicy.get(policies[0]!)!.length,
    measures: MEASURES.map((measure) => ({ measure, rows: rowsOf(measure) })).filter(
      ({ rows }) => rows.length > 0,
    ),
    skews: skewsOf(byPolicy),
  };
}
