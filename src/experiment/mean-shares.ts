import type { Outcome } from '../line/outcome.ts';
import { STATES, type State } from '../line/state.ts';
import { STOCK_MEASURES, type StockMeasures } from '../line/supply/stock-measures.ts';

/** Mean share of the counted time by station and state. */
export function meanShares(outcomes: readonly Outcome[]): Record<string, Record<State, number>> {
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

/** Mean share of the counted time that a crew's members were busy, by crew. */
export function meanCrewShares(outcomes: readonly Outcome[]): Record<string, number> {
  const mean = (crew: string) =>
    outcomes.reduce((sum, { crewBusyShares }) => sum + crewBusyShares[crew]!, 0) / outcomes.length;
  return Object.fromEntries(Object.keys(outcomes[0]!.crewBusyShares).map((crew) => [crew, mean(crew)]));
}

/** Mean of each measure of each limited stock over the runs that give it. */
export function meanStocks(outcomes: readonly Outcome[]): Record<string, StockMeasures> {
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
