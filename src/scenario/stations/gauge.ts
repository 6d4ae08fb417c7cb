import { z } from 'zod';
import { buffer } from '../buffers.ts';
import { count, entry, name, named } from '../fields.ts';
import { acceptance, every, inspectionOf } from '../inspection.ts';
import { reading } from '../readings.ts';
import { operating } from './operating.ts';
import { reader } from './reader.ts';

const MOST_APPRAISERS = 100;

export const gauge = entry({
  does: z.literal('gauge'),
  ...operating,
  buffer,
  every: every
    .optional()
    .describe('gauges one part in this many, or the next part after each such time; others pass in no time'),
  'first-of-lot': count(1)
    .optional()
    .describe('gauges so many parts of each delivery of the material, the first that come'),
  acceptance: acceptance
    .optional()
    .describe('acceptance sampling: ISO 2859-1, single sampling, general level II, normal or tightened'),
  measures: named(reading).describe('readings by feature'),
  appraisers: count(1, MOST_APPRAISERS)
    .default(1)
    .describe('people who read; who gauges a part is drawn with the part'),
  'off-limits': name.describe('a part read outside its tolerance goes to: pass, scrap, or a rework station'),
  reader: reader.optional(),
}).transform(({ every, firstOfLot, acceptance, ...rest }, context) => {
  const inspection = inspectionOf({ every, firstOfLot, acceptance });
  if (inspection) return { ...rest, inspection };
  context.addIssue({
    code: 'custom',
    message:
      'which parts are gauged? expected exactly one of "every" (12, or 10 min), "first-of-lot" (5) and "acceptance"',
  });
  return z.NEVER;
});
