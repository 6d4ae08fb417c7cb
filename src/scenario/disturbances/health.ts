import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { shareOfUsual, someOfUsual } from './size.ts';
import { building, comes, someOf, timing } from './timing.ts';

/** A station breaks down more often, or its repairs take longer. */
export const health = entry({
  disturbs: z.literal('health'),
  station: name.describe('the station that breaks down'),
  breakdown: name.optional().describe('the way in which it breaks down; left out, all of them'),
  'as-often': someOfUsual.optional().describe('how often it breaks down, in % of what it is otherwise'),
  'repairs-take': shareOfUsual
    .optional()
    .describe('how long repairs take that begin while it lasts, in % of what they take otherwise'),
  ...building,
  ...timing,
})
  .superRefine(comes)
  .superRefine(someOf(['as-often', 'repairs-take'], 'a share with its unit (%), such as 300 %'));
