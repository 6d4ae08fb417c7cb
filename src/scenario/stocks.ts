import { z } from 'zod';
import { mateCorrelations } from './correlations.ts';
import { anyShare, count, entry, length, measured, name, named, positiveLength, spread } from './fields.ts';
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

/** Values by name. */
const byName = <Value extends z.ZodType, Key extends string>(value: Value, key: Key, what: string) =>
  z
    .record(name, value, { error: `expected a mapping from ${what}` })
    .transform((given) =>
      Object.entries(given).map(
        ([name, value]) => ({ name, [key]: value }) as { name: string } & Record<Key, z.output<Value>>,
      ),
    )
    .optional();

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
  'stands-in-for': name
    .optional()
    .describe(
      'the stock whose place this one may take, when a policy says so; of a mate, with the same features',
    ),
  settings: byName(measured, 'target', 'settings to their targets').describe(
    'for sheet that stands in for another: targets of the forming station while it is formed',
  ),
  shifts: byName(length, 'by', 'features to lengths').describe(
    'for sheet that stands in for another: how much larger features formed from it turn out, besides their gains',
  ),
}).superRefine((given, context) => {
  const say = (message: string, ...path: string[]) => context.addIssue({ code: 'custom', message, path });
  checkSupply(given, say);
  if (given.standsInFor !== undefined) return;
  for (const key of ['settings', 'shifts'] as const)
    if (given[key]) say('only what stands in for another sheet has these; add "stands-in-for"', key);
});

export type StockSpec = z.output<typeof stock> & { readonly name: string };
