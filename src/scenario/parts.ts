import { z } from 'zod';
import { mouldFor } from '../standards/shrinkage.ts';
import { partCorrelations } from './correlations.ts';
import { expansion } from './expansion.ts';
import { entry, length, lengthPerTwo, name, named, positiveLength, ratio, share, spread } from './fields.ts';
import { sized, sizeOf } from './sizes.ts';
import { wear } from './wear.ts';

const feature = entry({
  nominal: length,
  tolerance: positiveLength.optional().describe('plus or minus, judged on readings'),
  ...sized,
  'made-at': name.describe('the forming or trimming station that gives the part this dimension'),
  mould: positiveLength.optional().describe('size in the mould; the part shrinks from it'),
  shrinkage: share.default(0).describe('of the material, applied to the mould size'),
  gains: z
    .record(name, ratio('length', '0.012 mm/°C'), { error: 'expected a mapping from settings to gains' })
    .optional()
    .describe('change of the dimension per unit of a forming setting, or per mm of sheet "thickness"'),
  curvatures: z
    .record(name, lengthPerTwo('0.002 mm/°C²'), { error: 'expected a mapping from settings to curvatures' })
    .optional()
    .describe('change of the dimension per square of the deviation of a setting, or of "thickness"'),
  interactions: z
    .array(
      entry({
        of: z
          .tuple([name, name], { error: 'expected two settings, such as [heater, vacuum]' })
          .describe('two settings, or one and "thickness"'),
        gain: lengthPerTwo('0.001 mm/°C/kPa'),
      }),
      { error: 'expected a list of interactions' },
    )
    .optional()
    .describe('change of the dimension per product of two deviations'),
  cavities: z
    .array(length, { error: 'expected a list of lengths, one a cavity' })
    .optional()
    .describe('offset of each cavity'),
  'lot-sd': spread.default(0).describe('standard deviation of what parts from one sheet delivery share'),
  'sheet-sd': spread.default(0).describe('standard deviation of what parts from one sheet share'),
  expands: expansion
    .optional()
    .describe('how much it grows per length and °C; for gauges that read it "warm-by" so many °C'),
  wear: wear
    .optional()
    .describe('of a trimmed feature: how it changes as the tool of the trimming station wears'),
})
  .superRefine(({ nominal, shrinkage, mould }, context) => {
    if (shrinkage === 0 || mould !== undefined) return;
    const example = shrinkage < 1 ? `, such as ${Number(mouldFor(nominal, shrinkage).toFixed(3))} mm` : '';
    const message = `shrinkage needs "mould", the size it shrinks from${example}`;
    context.addIssue({ code: 'custom', message });
  })
  .transform((given, context) => ({ ...given, ...sizeOf(given, context) }));

/** A kind of part. */
export const part = entry({
  features: named(feature),
  correlations: partCorrelations.describe('how features vary together'),
});

export type FeatureSpec = z.output<typeof feature> & { readonly name: string };
export type PartSpec = z.output<typeof part> & { readonly name: string };
