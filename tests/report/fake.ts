import { COUNTS, type Count } from '../../src/line/counts.ts';
import type { MeasureKey, Totals } from '../../src/line/measures.ts';
import type { Outcome } from '../../src/line/outcome.ts';
import { STATES, type State } from '../../src/line/state.ts';

const COUNTED = {
  ...(Object.fromEntries(COUNTS.map((count) => [count, 0])) as Record<Count, number>),
  ...{ started: 10, good: 8, scrapped: 1, firstAttempts: 9, firstFits: 8, tight: 1 },
};

/** The share of each state, those not given being 0. */
export function shares(given: Partial<Record<State, number>>): Record<State, number> {
  return Object.fromEntries(STATES.map((state) => [state, given[state] ?? 0])) as Record<State, number>;
}

/** Made-up measures; those not given have no value. */
export function outcome(
  policy: string,
  seed: number,
  given: Partial<Record<MeasureKey, number>> = {},
  totals: Partial<Record<MeasureKey, Totals>> = {},
): Outcome {
  return {
    policy,
    seed,
    measures: {
      throughput_per_h: null,
      scrap_rate: null,
      fit_rate: null,
      rework_rate: null,
      work_in_progress_parts: null,
      lead_time_s: null,
      turned_away_rate: null,
      on_time_rate: null,
      finished_goods_parts: null,
      order_fill_rate: null,
      stock_cost_per_good: null,
      ...given,
    },
    totals,
    stateShares: {
      form: shares({ working: 0.6, starved: 0.1, blocked: 0.2, down: 0.1 }),
      assemble: shares({ working: 0.5, starved: 0.3, down: 0.15, held: 0.05 }),
    },
    stockOutShares: { sheet: 0.02 },
    stocks: {},
    crewBusyShares: {},
    capabilities: [],
    counts: COUNTED,
    causes: { scrapped: [], misfits: [] },
    events: 100,
  };
}

/** A made-up wobble that differs from seed to seed and policy to policy, between -1 and 1. */
export function wobble(policy: number, seed: number): number {
  return Math.sin(seed * 12.9 + policy * 78.2);
}
