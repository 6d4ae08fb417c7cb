import { idealLine } from '../line/ideal.ts';
import { type StockEstimate, stockEstimates } from '../line/supply/stock-estimate.ts';
import { keeping } from '../policy/keep.ts';
import type { PolicySpec, Scenario } from '../scenario/scenario.ts';

/** For each policy and limited stock, as the policy keeps it, what theory says of it before any run. */
export type EstimatedStocks = Readonly<Record<string, Readonly<Record<string, StockEstimate>>>>;

/** The estimates are of the line without disturbances and without what the policy does while it runs. */
export function estimatedStocks(scenario: Scenario, policies: readonly PolicySpec[]): EstimatedStocks {
  return Object.fromEntries(
    policies.map(({ name, responses }) => {
      const kept = keeping(scenario, responses);
      const estimates = stockEstimates(kept, idealLine(kept));
      return [name, Object.fromEntries(estimates.map((estimate) => [estimate.stock, estimate]))];
    }),
  );
}
