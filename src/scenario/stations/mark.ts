import { z } from 'zod';
import { buffer } from '../buffers.ts';
import { entry, share } from '../fields.ts';
import { gradeShares } from '../grades.ts';
import { markQuality } from './mark-quality.ts';
import { operating } from './operating.ts';

export const mark = entry({
  does: z.literal('mark'),
  ...operating,
  buffer,
  'takes-hold': share.describe('chance that a mark can be read at all'),
  grades: gradeShares
    .optional()
    .describe('shares of the grades A to F among marks that took; left out, all are alike, grade A'),
  quality: markQuality
    .optional()
    .describe('instead of the shares of the grades: what marks are graded by, after ISO/IEC 15415'),
}).refine(({ grades, quality }) => grades === undefined || quality === undefined, {
  error: '"quality" decides the grades; take out "grades" or "quality"',
  path: ['grades'],
});
