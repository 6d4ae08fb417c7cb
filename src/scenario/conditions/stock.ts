import type { z } from 'zod';
import { count, entry, name } from '../fields.ts';
import { type Bounds, bounds, boundsOf } from './bounds.ts';

/** Pieces of a stock on hand. */
export const stockLevel = entry({
  stock: name.describe('a limited stock: how many pieces are on hand'),
  ...bounds(count(0), count(1)),
}).transform((given, context): { readonly stock: string } & Bounds => ({
  stock: given.stock,
  ...boundsOf(given, context),
}));

export type StockCondition = z.output<typeof stockLevel>;
