import type { z } from 'zod';
import { count, entry, word } from '../fields.ts';
import { type Bounds, bounds, boundsOf } from './bounds.ts';

const AMOUNTS = ['finished-goods', 'open-orders', 'late-orders'] as const;

export type DemandAmount = (typeof AMOUNTS)[number];

/** Good assemblies on hand, orders that are not served yet, or those among them that are due already. */
export const demandLevel = entry({
  demand: word(AMOUNTS).describe(
    'finished goods on hand, orders not served yet, or orders not served although they are due',
  ),
  ...bounds(count(0), count(1)),
}).transform((given, context): { readonly demand: DemandAmount } & Bounds => ({
  demand: given.demand,
  ...boundsOf(given, context),
}));

export type DemandCondition = z.output<typeof demandLevel>;
