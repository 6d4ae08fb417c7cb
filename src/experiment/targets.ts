import type { Measure, MeasureKey } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import type { Estimate } from '../statistics/estimate.ts';
import { wilsonProportion } from '../statistics/proportion-interval.ts';
import { LEVEL } from './comparison.ts';

/** What a run should reach: at least so much where more is better, at most so much where less is. */
export interface Target {
  readonly measure: Measure & { readonly key: MeasureKey };
  /** In the unit that the key names. */
  readonly limit: number;
}

/** How often a policy met a target. */
interface TargetRow {
  readonly policy: string;
  readonly met: number;
  /** Runs that gave no value, which count as not met. */
  readonly without: number;
  /** Share of all runs; its interval holds by itself at LEVEL. */
  readonly share: Estimate;
}

export interface TargetFound extends Target {
  /** Without the policies of which no run gives a value. */
  readonly rows: readonly TargetRow[];
}

/** A run that misses by no more than this, of the limit, misses by rounding. */
const ROUNDING = 1e-9;

function meets(value: number | null, { measure, limit }: Target): boolean {
  if (value === null) return false;
  const slack = ROUNDING * Math.abs(limit);
  return measure.better === 'higher' ? value >= limit - slack : value <= limit + slack;
}

function shareOf(met: number, runs: number): Estimate {
  const share = wilsonProportion(met, runs, LEVEL);
  return runs > 1 ? share : { ...share, lower: null, upper: null, method: 'one run, no interval' };
}

/** For each target the share of each policy's runs that meet it. */
export function targetsMet(
  targets: readonly Target[],
  policies: readonly string[],
  outcomes: readonly Outcome[],
): TargetFound[] {
  return targets.map((target) => ({
    ...target,
    rows: policies.flatMap((policy) => {
      const values = outcomes
        .filter((outcome) => outcome.policy === policy)
        .map(({ measures }) => measures[target.measure.key]);
      const without = values.filter((value) => value === null).length;
      if (without === values.length) return [];
      const met = values.filter((value) => meets(value, target)).length;
      return [{ policy, met, without, share: shareOf(met, values.length) }];
    }),
  }));
}
