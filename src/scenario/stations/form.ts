import { z } from 'zod';
import { count, entry, measured, name, named, ratio } from '../fields.ts';
import { operating } from './operating.ts';

const setting = entry({
  target: measured,
  'cycle-sd': measured
    .refine(({ value }) => value >= 0, { error: 'a standard deviation is not negative' })
    .optional()
    .describe('standard deviation from cycle to cycle'),
}).refine(({ target, cycleSd }) => cycleSd === undefined || cycleSd.dimension === target.dimension, {
  error: '"cycle-sd" and "target" have units of different kinds',
  path: ['cycle-sd'],
});

export const form = entry({
  does: z.literal('form'),
  ...operating,
  takes: name.describe('the stock of sheet'),
  makes: name.describe('the kind of part'),
  'per-sheet': count(1).describe('parts from one sheet'),
  heating: ratio('time', '16 s/mm')
    .optional()
    .describe('heating time per mm of sheet thickness, added to the cycle'),
  settings: named(setting).optional(),
});
