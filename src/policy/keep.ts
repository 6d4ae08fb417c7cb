import type { ResponseOf, ResponseSpec } from '../scenario/responses.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { keptAs } from '../scenario/supply/kept-as.ts';
import type { Install } from './install.ts';

const isKeeping = (response: ResponseSpec): response is ResponseOf<'keep'> => response.do === 'keep';

/** The scenario with the stocks as the policy keeps them: what differs does so from the start of the run on. */
export function keeping(scenario: Scenario, responses: readonly ResponseSpec[]): Scenario {
  const kept = responses.filter(isKeeping);
  if (kept.length === 0) return scenario;
  const stocks = scenario.stocks.map((stock) =>
    kept.filter((response) => response.stock === stock.name).reduce(keptAs, stock),
  );
  return { ...scenario, stocks };
}

/** Nothing is left to do on the line: it was built with the stocks as `keeping` gives them. */
export const keep: Install<'keep'> = () => null;
