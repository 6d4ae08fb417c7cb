import { z } from 'zod';
import { entry, length, name, named, positiveLength, ratio, share, spread } from './fields.ts';
import { wear } from './wear.ts';

/** Between which sizes a feature is within its tolerance, mm. */
interface Limits {
  readonly lower: number;
  readonly upper: number;
}

const feature = entry({
  nominal: length,
  tolerance: positiveLength.optional().describe('plus or minus, judged on readings'),
  'made-at': name.describe('the forming or trimming station that gives the part this dimension'),
  mould: positiveLength.optional().describe('size in the mould; the part shrinks from it'),
  shrinkage: share.default(0).describe('of the material, applied to the mould size'),
  gains: z
    .record(name, ratio('length', '0.012 mm/°C'), { error: 'expected a mapping from settings to gains' })
    .optional()
    .describe('change of the dimension per unit of a forming setting, or per mm of sheet "thickness"'),
  cavities: z
    .array(length, { error: 'expected a list of lengths, one a cavity' })
    .optional()
    .describe('offset of each cavity'),
  'lot-sd': spread.default(0).describe('standard deviation of what parts from one sheet delivery share'),
  'sheet-sd': spread.default(0).describe('standard deviation of what parts from one sheet share'),
  'own-sd': spread.default(0).describe('standard deviation of what each part adds'),
  wear: wear
    .optional()
    .describe('of a trimmed feature: how it changes as the tool of the trimming station wears'),
})
  .refine((given) => given.shrinkage === 0 || given.mould !== undefined, {
    error: 'shrinkage needs "mould", the size it shrinks from',
  })
  .transform((given) => {
    const { nominal, tolerance } = given;
    const limits: Limits | null =
      tolerance === undefined ? null : { lower: nominal - tolerance, upper: nominal + tolerance };
    // What the part should have: what readings are compared with, and what rework and retuning bring it to.
    return { ...given, limits, aim: nominal };
  });

/** A kind of part. */
export const part = entry({ features: named(feature) });

export type FeatureSpec = z.output<typeof feature> & { readonly name: string };
export type PartSpec = z.output<typeof part> & { readonly name: string };
