import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { gradeShares } from '../grades.ts';
import { shareThere } from './size.ts';
import { building, comes, timing } from './timing.ts';

/** Marks take less often, or get worse grades. */
export const marks = entry({
  disturbs: z.literal('marks'),
  station: name.describe('the marking station'),
  'takes-hold': shareThere.optional().describe('chance that a mark can be read at all, while it lasts'),
  grades: gradeShares
    .optional()
    .describe('shares of the grades A to F among marks that took, while it lasts'),
  ...building,
  ...timing,
})
  .superRefine(comes)
  .refine(({ takesHold, grades }) => takesHold !== undefined || grades !== undefined, {
    error: '"takes-hold" is missing: expected a share with its unit (%), such as 2 %, or "grades"',
  });
