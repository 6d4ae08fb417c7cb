import type { Measure } from '../line/measures.ts';
import { MEASURES, type MeasureKey } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import { STATES, type State } from '../line/state.ts';
import { STOCK_MEASURES, type StockMeasures } from '../line/supply/stock-measures.ts';
import { type Estimate, possible } from '../statistics/estimate.ts';
import { meanInterval } from '../statistics/mean-interval.ts';

/** Coverage of every interval. */
export const LEVEL = 0.95;

/** `no change`: every run gave what the first policy gave under the same seed. */
export type Verdict = 'better' | 'worse' | 'undecided' | 'no change';

/** One policy under one measure. */
export interface Row {
  readonly policy: string;
  readonly estimate: Estimate;
  /** Paired difference to the first policy; null for the first policy itself. */
  readonly difference: Estimate | null;
  /** Null for the first policy and the bound, and where one seed gives no interval. */
  readonly verdict: Verdict | null;
}

export interface MeasureComparison {
  readonly measure: Measure;
  readonly rows: readonly Row[];
}

/**
 * What many runs say of the policies. Every difference interval holds together with all the others at LEVEL, that of a
 * bound by itself.
 */
export interface Comparison {
  readonly policies: readonly string[];
  readonly baseline: string;
  /** The policy that is a bound, and stands for reference: it is among the policies, the last, and not among the comparisons. */
  readonly bound: string | null;
  readonly seeds: number;
  readonly comparisons: number;
  /** Only the measures that the runs give a value for. */
  readonly measures: readonly MeasureComparison[];
  /** Mean share of the counted time by policy, station and state. */
  readonly stateShares: Readonly<Record<string, Readonly<Record<string, Readonly<Record<State, number>>>>>>;
  /** Mean share of the counted time that a crew's members were busy, by policy and crew. */
  readonly crewShares: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** Mean of each measure of each limited stock over the runs that give it, by policy. */
  readonly stocks: Readonly<Record<string, Readonly<Record<string, StockMeasures>>>>;
}

/** Better or worse only when the whole interval lies on one side of zero. */
function verdictOf(difference: Estimate, better: Measure['better']): Verdict | null {
  if (difference.lower === null || difference.upper === null) return null;
  if (difference.lower === 0 && difference.upper === 0) return 'no change';
  if (difference.lower > 0) return better === 'higher' ? 'better' : 'worse';
  if (difference.upper < 0) return better === 'higher' ? 'worse' : 'better';
  return 'undecided';
}

function values(outcomes: readonly Outcome[], key: MeasureKey): number[] {
  return outcomes.map((outcome) => outcome.measures[key]).filter((value) => value !== null);
}

function meanShares(outcomes: readonly Outcome[]): Record<string, Record<State, number>> {
  const shares: Record<string, Record<State, number>> = {};
  for (const station of Object.keys(outcomes[0]!.stateShares)) {
    const mean = (state: State) =>
      outcomes.reduce((sum, { stateShares }) => sum + stateShares[station]![state], 0) / outcomes.length;
    shares[station] = Object.fromEntries(STATES.map((state) => [state, mean(state)])) as Record<
      State,
      number
    >;
  }
  return shares;
}

function meanCrewShares(outcomes: readonly Outcome[]): Record<string, number> {
  const mean = (crew: string) =>
    outcomes.reduce((sum, { crewBusyShares }) => sum + crewBusyShares[crew]!, 0) / outcomes.length;
  return Object.fromEntries(Object.keys(outcomes[0]!.crewBusyShares).map((crew) => [crew, mean(crew)]));
}

function meanStocks(outcomes: readonly Outcome[]): Record<string, StockMeasures> {
  const mean = (name: string, key: keyof StockMeasures) => {
    const found = outcomes.flatMap(({ stocks }) => stocks[name]![key] ?? []);
    return found.length > 0 ? found.reduce((sum, value) => sum + value, 0) / found.length : null;
  };
  return Object.fromEntries(
    Object.keys(outcomes[0]!.stocks).map((name) => [
      name,
      Object.fromEntries(STOCK_MEASURES.map(({ key }) => [key, mean(name, key)])) as StockMeasures,
    ]),
  );
}

/**
 * Compares policies by their outcomes, which must hold every policy under the same seeds, in order of seed.
 * @param policies names in the scenario's order, a bound last; the first is the one the others are compared with
 * @param bound the name of the policy that is the bound, if it is among them
 */
export function compare(
  policies: readonly string[],
  outcomes: readonly Outcome[],
  bound: string | null = null,
): Comparison {
  const baseline = policies[0]!;
  const byPolicy = new Map(policies.map((name) => [name, outcomes.filter(({ policy }) => policy === name)]));
  const base = byPolicy.get(baseline)!;
  const judged = MEASURES.filter(({ key }) =>
    policies.some((name) => values(byPolicy.get(name)!, key).length > 0),
  );
  const compared = policies.filter((name) => name !== baseline && name !== bound);
  const comparisons = Math.max(1, compared.length * judged.length);

  const rowOf = (measure: (typeof MEASURES)[number], policy: string): Row | null => {
    const own = byPolicy.get(policy)!;
    const found = values(own, measure.key);
    if (found.length === 0) return null;
    const estimate = possible(meanInterval(found, LEVEL), { least: 0, ...measure });
    if (policy === baseline) return { policy, estimate, difference: null, verdict: null };
    const paired = own.flatMap((outcome, i) => {
      const one = outcome.measures[measure.key];
      const other = base[i]!.measures[measure.key];
      return one === null || other === null ? [] : [one - other];
    });
    const together = policy === bound ? 1 : comparisons;
    const difference = paired.length > 0 ? meanInterval(paired, LEVEL, together) : null;
    if (policy === bound) return { policy, estimate, difference, verdict: null };
    return { policy, estimate, difference, verdict: difference && verdictOf(difference, measure.better) };
  };

  return {
    policies,
    baseline,
    bound,
    seeds: base.length,
    comparisons,
    measures: judged.map((measure) => ({
      measure,
      rows: policies.map((policy) => rowOf(measure, policy)).filter((row) => row !== null),
    })),
    stateShares: Object.fromEntries(policies.map((name) => [name, meanShares(byPolicy.get(name)!)])),
    crewShares: Object.fromEntries(policies.map((name) => [name, meanCrewShares(byPolicy.get(name)!)])),
    stocks: Object.fromEntries(policies.map((name) => [name, meanStocks(byPolicy.get(name)!)])),
  };
}
