import type { StockSpec } from '../stocks.ts';
import type { SupplierSpec } from './supplier.ts';

/** A supplier with all that holds for it. `name` is empty where the stock has only one, which needs none. */
export type FullSupplierSpec = SupplierSpec & { readonly name: string };

/** The suppliers of a stock, each with what the stock says for all of them where it says nothing itself. */
export function suppliersOf(stock: StockSpec): readonly FullSupplierSpec[] {
  const { leadTime, delivers, incoming, outages, price, perOrder } = stock;
  const common = { leadTime, delivers, incoming, outages, price, perOrder };
  if (!stock.suppliers) return [{ name: '', ...common }];
  return stock.suppliers.map(({ name, share, rank, ...own }) => {
    const given = Object.fromEntries(Object.entries(own).filter(([, value]) => value !== undefined));
    return { name, share, rank, ...common, ...given };
  });
}

/** Whether a stock is ever ordered. */
export const isOrdered = ({ order, upTo }: Pick<StockSpec, 'order' | 'upTo'>): boolean =>
  order !== undefined || upTo !== undefined;
