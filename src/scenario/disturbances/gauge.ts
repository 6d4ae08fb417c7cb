import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { changeOfLength, shareOfUsual } from './size.ts';
import { building, comes, someOf, timing } from './timing.ts';

/** A gauge reads off, or with another spread. */
export const gauge = entry({
  disturbs: z.literal('gauge'),
  station: name.describe('the gauging station'),
  feature: name.optional().describe('the feature that it reads wrong; left out, all that it measures'),
  bias: changeOfLength.optional().describe('how much larger it reads than otherwise'),
  spread: shareOfUsual.optional().describe('how large its repeatability is, in % of what it is otherwise'),
  ...building,
  ...timing,
})
  .superRefine(comes)
  .superRefine(someOf(['bias', 'spread'], 'a length with its unit, such as 0.05 mm'));
