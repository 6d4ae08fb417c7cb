import type { CauseRates } from '../experiment/cause-rates.ts';
import type { Comparison } from '../experiment/comparison.ts';
import type { Looked } from '../experiment/looked.ts';
import type { Spread } from '../experiment/spread.ts';
import type { Twins } from '../experiment/twins.ts';
import { isAverted } from '../scenario/foreseen.ts';
import type { PolicySpec, Scenario } from '../scenario/scenario.ts';
import { listed } from './words.ts';

/** A bound as tables and charts name it, so that nobody takes it for a policy. */
const marked = (name: string): string => `${name} (bound)`;

/** What a bound of the scenario stands for, in a line. */
export function boundText({ name, responses }: PolicySpec, scenario: Scenario): string {
  const { disturbances, stocks } = scenario;
  const names = (of: (it: Scenario['disturbances'][number]) => boolean) =>
    disturbances.filter(of).map((it) => it.name);
  const gone = names(isAverted);
  const left = names((it) => !isAverted(it));
  const fails = stocks.filter((stock) => stock.outages || stock.suppliers?.some(({ outages }) => outages));
  const keeps = responses.flatMap((it) => (it.do === 'keep' ? [it.stock] : []));
  return [
    `${marked(name)}: no policy, but what it would be to know true values and all that is to come, at no cost: ` +
      (gone.length > 0
        ? `nothing of ${listed(gone)}, each ended as it begins or ordered ahead of`
        : 'none of the disturbances is such that it could be ended or ordered ahead of'),
    ...(left.length > 0 ? [`${listed(left)} ${left.length > 1 ? 'go' : 'goes'} on as for the others`] : []),
    ...(fails.length > 0 ? [`no outages of who supplies ${listed(fails.map((stock) => stock.name))}`] : []),
    ...(scenario.stations.some(({ does }) => does === 'assemble')
      ? ['attempts to assemble that would end in scrap take no time']
      : []),
    ...(keeps.length > 0 ? [`${listed(keeps)} kept as it says`] : []),
  ].join('; ');
}

const renamed = <Row extends { readonly policy: string }>(
  rows: readonly Row[],
  is: (name: string) => string,
) => rows.map((row) => ({ ...row, policy: is(row.policy) }));

const rekeyed = <T>(by: Readonly<Record<string, T>>, is: (name: string) => string): Record<string, T> =>
  Object.fromEntries(Object.entries(by).map(([name, value]) => [is(name), value]));

function namer({ bound }: Pick<Comparison, 'bound'>): (name: string) => string {
  return (name) => (name === bound ? marked(name) : name);
}

/** The comparison with its bound named as one; the same where there is none. */
export function withBoundMarked(comparison: Comparison): Comparison {
  if (comparison.bound === null) return comparison;
  const is = namer(comparison);
  const { policies, baseline, bound, measures, stateShares, crewShares, stocks } = comparison;
  return {
    ...comparison,
    policies: policies.map(is),
    baseline: is(baseline),
    bound: is(bound!),
    measures: measures.map((compared) => ({ ...compared, rows: renamed(compared.rows, is) })),
    stateShares: rekeyed(stateShares, is),
    crewShares: rekeyed(crewShares, is),
    stocks: rekeyed(stocks, is),
  };
}

/** Rows of anything with the bound named as one. */
export function withBoundMarkedInRows<
  Row extends { readonly policy: string },
  Of extends { readonly rows: readonly Row[] },
>(found: readonly Of[], comparison: Pick<Comparison, 'bound'>): Of[] {
  const is = namer(comparison);
  return found.map((of) => ({ ...of, rows: renamed(of.rows, is) }));
}

/** The causes of scrap with the bound named as one. */
export function withBoundMarkedInCauses(causes: CauseRates, of: Pick<Comparison, 'bound'>): CauseRates {
  const { scrapped, misfits } = causes;
  return { scrapped: withBoundMarkedInRows(scrapped, of), misfits: withBoundMarkedInRows(misfits, of) };
}

/** What pictures show with the bound named as one. */
export function withBoundMarkedInLooked(looked: Looked, of: Pick<Comparison, 'bound'>): Looked {
  const { sizes, levels } = looked;
  return { ...looked, sizes: withBoundMarkedInRows(sizes, of), levels: withBoundMarkedInRows(levels, of) };
}

/** The spread of runs with the bound named as one. */
export function withBoundMarkedInSpread(spread: Spread, comparison: Pick<Comparison, 'bound'>): Spread {
  const { measures, skews } = spread;
  return {
    ...spread,
    measures: withBoundMarkedInRows(measures, comparison),
    skews: renamed(skews, namer(comparison)),
  };
}

/** The same of what disturbances cost. */
export function withBoundMarkedInTwins(twins: Twins, comparison: Pick<Comparison, 'bound'>): Twins {
  if (comparison.bound === null) return twins;
  const is = namer(comparison);
  const { measures, curves, runs } = twins;
  return {
    ...twins,
    measures: measures.map(({ measure, rows }) => ({ measure, rows: renamed(rows, is) })),
    curves: renamed(curves, is),
    runs: renamed(runs, is),
  };
}
