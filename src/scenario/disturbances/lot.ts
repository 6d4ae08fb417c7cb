import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { changeOfLength, shareThere } from './size.ts';
import { building, comes, someOf, timing } from './timing.ts';

/** Bad lots come: all deliveries that arrive while it lasts. */
export const lot = entry({
  disturbs: z.literal('lot'),
  stock: name.describe('the stock whose deliveries are bad that come while it lasts'),
  supplier: name.optional().describe('the one of several whose deliveries are bad; left out, all of them'),
  feature: name
    .optional()
    .describe('what is off in them: a feature of the mate, or the "thickness" of sheet'),
  by: changeOfLength.optional().describe('how much larger it is in all pieces of such a lot'),
  unsound: shareThere
    .optional()
    .describe('chance that a piece of such a lot is unsound that would be sound otherwise'),
  ...building,
  ...timing,
})
  .superRefine(comes)
  .superRefine(someOf(['by', 'unsound'], 'a length with its unit, such as 0.2 mm, with "feature"'))
  .superRefine(({ feature, by }, context) => {
    if (feature === undefined && by !== undefined) {
      const message = '"by" needs "feature": what is so much larger, a feature of the mate or "thickness"';
      context.addIssue({ code: 'custom', message, path: ['by'] });
    }
    if (feature !== undefined && by === undefined) {
      const message = '"feature" goes with "by", how much larger it is, such as 0.2 mm';
      context.addIssue({ code: 'custom', message, path: ['feature'] });
    }
  });
