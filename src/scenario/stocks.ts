import { z } from 'zod';
import { mateCorrelations } from './correlations.ts';
import { anyShare, count, entry, length, named, positiveLength, spread } from './fields.ts';
import { time } from './laws.ts';
import { sized, sizeOf } from './sizes.ts';

const mateFeature = entry({
  nominal: length,
  ...sized,
  'lot-sd': spread.default(0).describe('standard deviation of the offset that a whole delivery shares'),
}).transform((given, context) => ({ ...given, ...sizeOf(given, context) }));

const thickness = entry({
  nominal: positiveLength,
  'lot-sd': spread.default(0).describe('standard deviation of the offset that a whole delivery shares'),
  'own-sd': spread.default(0).describe('standard deviation of what each sheet adds'),
});

/** One bought-in material. */
export const stock = entry({
  unlimited: z
    .literal(true, { error: 'expected true, or leave it out' })
    .optional()
    .describe('never runs out'),
  'on-hand': count(0).optional().describe('pieces in stock at the start'),
  'reorder-at': count(0).optional().describe('order when pieces on hand and on order are this few'),
  order: count(1).optional().describe('pieces in one order; each delivery is one lot'),
  'lead-time': time.optional().describe('from order to delivery'),
  thickness: thickness.optional().describe('for sheet'),
  shrinkage: entry({
    'lot-sd': anyShare.describe(
      'standard deviation from delivery to delivery of the share that parts shrink by',
    ),
  })
    .optional()
    .describe('for sheet: how the shrinkage of parts with a mould varies'),
  features: named(mateFeature).optional().describe('for mates: the dimensions that meet a part'),
  correlations: mateCorrelations.describe('for mates: how features vary together'),
}).superRefine((given, context) => {
  const rule = [given.reorderAt, given.order, given.leadTime].filter((key) => key !== undefined).length;
  if (given.unlimited && (given.onHand !== undefined || rule > 0)) {
    context.addIssue({
      code: 'custom',
      message: 'an unlimited stock needs no on-hand, reorder-at, order or lead-time',
    });
  }
  if (!given.unlimited && given.onHand === undefined) {
    context.addIssue({
      code: 'custom',
      message: 'expected "on-hand: 400" (pieces at the start) or "unlimited: true"',
    });
  }
  if (rule !== 0 && rule !== 3) {
    context.addIssue({
      code: 'custom',
      message: 'reordering needs all three of reorder-at, order and lead-time',
    });
  }
});

export type StockSpec = z.output<typeof stock> & { readonly name: string };
