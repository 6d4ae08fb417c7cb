import { MEASURES, type Measure, type MeasureKey } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import type { State } from '../line/state.ts';
import type { StockMeasures } from '../line/supply/stock-measures.ts';
import { type Estimate, possible } from '../statistics/estimate.ts';
import { meanInterval } from '../statistics/mean-interval.ts';
import { type BestRow, bestOf } from './beside-best.ts';
import { everyPair, type PairRow, pairComparisons } from './every-pair.ts';
import { meanCrewShares, meanShares, meanStocks } from './mean-shares.ts';
import { type Judged, judge, NOT_JUDGED, pairedDifferences } from './paired.ts';

/** Coverage of every interval. */
export const LEVEL = 0.95;

/** One policy under one measure, and what is said of it against the first policy; of that one itself and of a bound no verdict is given. */
export interface Row extends Judged {
  readonly policy: string;
  readonly estimate: Estimate;
}

export interface MeasureComparison {
  readonly measure: Measure;
  /** What a difference must exceed to be worth having, in the unit of the measure's key; 0 where every difference is. */
  readonly worth: number;
  readonly rows: readonly Row[];
  /** Without the bound; empty where there are no two policies, or one seed gives no interval. */
  readonly best: readonly BestRow[];
  /** Each policy against each before it, without the bound. */
  readonly pairs: readonly PairRow[];
}

/**
 * What many runs say of the policies. Three families of intervals hold together at LEVEL, each over all measures: the
 * differences to the first policy, those of all pairs, and the comparisons with the best. Those of a bound hold by themselves.
 */
export interface Comparison {
  readonly policies: readonly string[];
  readonly baseline: string;
  /** The policy that is a bound, and stands for reference: it is among the policies, the last, and not among the comparisons. */
  readonly bound: string | null;
  readonly seeds: number;
  /** Differences to the first policy that hold together. */
  readonly comparisons: number;
  /** Differences of all pairs that hold together; 0 where there is no pair. */
  readonly pairComparisons: number;
  /** Only the measures that the runs give a value for. */
  readonly measures: readonly MeasureComparison[];
  /** Mean share of the counted time by policy, station and state. */
  readonly stateShares: Readonly<Record<string, Readonly<Record<string, Readonly<Record<State, number>>>>>>;
  /** Mean share of the counted time that a crew's members were busy, by policy and crew. */
  readonly crewShares: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** Mean of each measure of each limited stock over the runs that give it, by policy. */
  readonly stocks: Readonly<Record<string, Readonly<Record<string, StockMeasures>>>>;
}

function values(outcomes: readonly Outcome[], key: MeasureKey): number[] {
  return outcomes.map((outcome) => outcome.measures[key]).filter((value) => value !== null);
}

/**
 * Compares policies by their outcomes, which must hold every policy under the same seeds, in order of seed.
 * @param policies names in the scenario's order, a bound last; the first is the one the others are compared with
 * @param bound the name of the policy that is the bound, if it is among them
 * @param worth what a difference must exceed to be worth having, in the unit of the measure's key; 0 for those not named
 */
export function compare(
  policies: readonly string[],
  outcomes: readonly Outcome[],
  bound: string | null = null,
  worth: ReadonlyMap<MeasureKey, number> = new Map(),
): Comparison {
  const baseline = policies[0]!;
  const byPolicy = new Map(policies.map((name) => [name, outcomes.filter(({ policy }) => policy === name)]));
  const base = byPolicy.get(baseline)!;
  const judged = MEASURES.filter(({ key }) =>
    policies.some((name) => values(byPolicy.get(name)!, key).length > 0),
  ).map((measure) => ({ measure, worth: worth.get(measure.key) ?? 0 }));
  const chosen = new Map([...byPolicy].filter(([name]) => name !== bound));
  const compared = [...chosen.keys()].filter((name) => name !== baseline);
  const comparisons = Math.max(1, compared.length * judged.length);

  const rowOf = ({ measure, worth }: (typeof judged)[number], policy: string): Row | null => {
    const own = byPolicy.get(policy)!;
    const found = values(own, measure.key);
    if (found.length === 0) return null;
    const estimate = possible(meanInterval(found, LEVEL), { least: 0, ...measure });
    if (policy === baseline) return { policy, estimate, ...NOT_JUDGED };
    const differences = pairedDifferences(own, base, measure.key);
    if (policy === bound) {
      const difference = differences.length > 0 ? meanInterval(differences, LEVEL) : null;
      return { policy, estimate, ...NOT_JUDGED, difference };
    }
    const criterion = { better: measure.better, worth, level: LEVEL, comparisons };
    return { policy, estimate, ...judge(differences, criterion) };
  };

  const pairs = everyPair(chosen, judged, LEVEL);
  // Held together by Bonferroni's inequality over the measures, like the other families.
  const bestLevel = 1 - (1 - LEVEL) / Math.max(1, judged.length);
  return {
    policies,
    baseline,
    bound,
    seeds: base.length,
    comparisons,
    pairComparisons: pairComparisons(chosen.size, judged.length),
    measures: judged.map((one, i) => ({
      ...one,
      rows: policies.map((policy) => rowOf(one, policy)).filter((row) => row !== null),
      best: bestOf(chosen, one.measure, bestLevel),
      pairs: pairs[i]!,
    })),
    stateShares: Object.fromEntries(policies.map((name) => [name, meanShares(byPolicy.get(name)!)])),
    crewShares: Object.fromEntries(policies.map((name) => [name, meanCrewShares(byPolicy.get(name)!)])),
    stocks: Object.fromEntries(policies.map((name) => [name, meanStocks(byPolicy.get(name)!)])),
  };
}
