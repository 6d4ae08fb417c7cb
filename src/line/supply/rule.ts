import type { StockSpec } from '../../scenario/stocks.ts';
import { isOrdered } from '../../scenario/supply/suppliers-of.ts';

/** When and how much of a stock is ordered. What is on hand and on order, less what is owed, is its position. */
export class Rule {
  /** Orders are placed while the position is at or below it. */
  readonly orderAt: number;
  /** Time from one look at the stock to the next, s; null where it is looked at all the time. */
  readonly review: number | null;
  readonly oneAtATime: boolean;
  /** Whether what is waited for counts as taken. */
  readonly backorders: boolean;
  private readonly order: number | undefined;
  private readonly upTo: number;
  private readonly least: number;
  private readonly lot: number;

  constructor(spec: StockSpec) {
    this.order = spec.order;
    this.upTo = spec.upTo ?? 0;
    this.orderAt = spec.reorderAt ?? this.upTo - 1;
    this.review = spec.review ?? null;
    this.oneAtATime = spec.oneOrderAtATime ?? false;
    this.backorders = spec.whenShort === 'backorders';
    this.least = spec.leastOrder ?? 1;
    this.lot = spec.lotsOf ?? 1;
  }

  /** Pieces to order at a position that is at or below `orderAt`. */
  quantity(position: number): number {
    const wanted = Math.max(this.order ?? this.upTo - position, this.least);
    return Math.ceil(wanted / this.lot) * this.lot;
  }
}

/** The rule of a stock; null where it is never ordered. */
export const ruleOf = (spec: StockSpec): Rule | null => (isOrdered(spec) ? new Rule(spec) : null);
