import { z } from 'zod';
import { mateCorrelations } from './correlations.ts';
import { anyShare, count, entry, length, named, positiveLength, spread } from './fields.ts';
import { sized, sizeOf } from './sizes.ts';
import { checkSupply } from './supply/check-supply.ts';
import { supplyKeys } from './supply/supply.ts';

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
  ...supplyKeys,
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
  checkSupply(given, (message, ...path) => context.addIssue({ code: 'custom', message, path }));
});

export type StockSpec = z.output<typeof stock> & { readonly name: string };
