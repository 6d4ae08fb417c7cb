import { z } from 'zod';
import { entry, featureOrMates } from '../fields.ts';
import { changeOfLength, shareOfUsual } from './size.ts';
import { building, comes, someOf, timing } from './timing.ts';

/** A feature of the part is made off its mean, or with another spread. */
export const feature = entry({
  disturbs: z.literal('feature'),
  feature: featureOrMates.describe('the feature of the part, disturbed where it is made'),
  by: changeOfLength.optional().describe('how much larger it is made'),
  spread: shareOfUsual
    .optional()
    .describe('how large the variation of its own is, in % of what it is otherwise'),
  ...building,
  ...timing,
})
  .superRefine(comes)
  .superRefine(someOf(['by', 'spread'], 'a length with its unit, such as 0.1 mm'));
