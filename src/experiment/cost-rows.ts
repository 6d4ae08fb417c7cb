import type { Outcome } from '../line/outcome.ts';

/** What a stock may cost, by its measures. */
export const COST_KINDS = [
  'purchase_cost',
  'ordering_cost',
  'holding_cost',
  'expedite_cost',
  'shortage_cost',
] as const;

/** What stocks cost under one policy, for each good assembly, mean over the runs that made one. */
export interface CostRow {
  readonly policy: string;
  /** By kind, in the order of `COST_KINDS`; they add up to the measure stock_cost_per_good. */
  readonly costs: readonly number[];
}

function ofRun({ stocks, counts: { good } }: Outcome): number[][] {
  if (good === 0) return [];
  const all = Object.values(stocks);
  return [COST_KINDS.map((kind) => all.reduce((sum, own) => sum + (own[kind] ?? 0), 0) / good)];
}

/** A row a policy; empty where no stock names a price. */
export function costRows(policies: readonly string[], outcomes: readonly Outcome[]): CostRow[] {
  if (!outcomes.some(({ measures }) => measures.stock_cost_per_good !== null)) return [];
  return policies.flatMap((policy) => {
    const runs = outcomes.filter((outcome) => outcome.policy === policy).flatMap(ofRun);
    if (runs.length === 0) return [];
    const costs = COST_KINDS.map((_, k) => runs.reduce((sum, run) => sum + run[k]!, 0) / runs.length);
    return [{ policy, costs }];
  });
}
