import type { StockSpec } from '../stocks.ts';

/** How many pieces of a stock are kept, and when how many are ordered. What is left out stays as the stock says. */
export interface Keeping {
  readonly onHand?: number | undefined;
  readonly reorderAt?: number | undefined;
  readonly order?: number | undefined;
  readonly upTo?: number | undefined;
}

/** The stock, kept in this way. One that is filled up is not ordered by the piece, and the other way round. */
export function keptAs(stock: StockSpec, { onHand, reorderAt, order, upTo }: Keeping): StockSpec {
  const { order: orderBefore, upTo: upToBefore, ...rest } = stock;
  return {
    ...rest,
    ...(onHand !== undefined && { onHand }),
    ...(reorderAt !== undefined && { reorderAt }),
    order: upTo === undefined ? (order ?? orderBefore) : undefined,
    upTo: order === undefined ? (upTo ?? upToBefore) : undefined,
  };
}
