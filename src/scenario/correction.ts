import { entry, positiveLength, ratio, share, spread, word } from './fields.ts';

const pace = ratio('time', '20 s/mm')
  .refine(({ per }) => per === 'length', { error: 'expected a time per length, such as 20 s/mm' })
  .refine(({ value }) => value >= 0, { error: 'the time for a correction cannot be negative' });

/**
 * What a rework station does to one feature. With any of the optional keys it looks first: what is within its limits
 * stays as it is, and a part that cannot be brought in is scrapped.
 */
export const correction = entry({
  removes: share.describe('share of the deviation from nominal that is removed'),
  'own-sd': spread.describe('standard deviation of what the rework itself adds'),
  most: positiveLength
    .optional()
    .describe('largest deviation that can be brought in; a part that is further off is scrapped here'),
  only: word(['down', 'up'])
    .optional()
    .describe(
      'the one direction that the feature can be changed in; a part that is off the other way is scrapped here',
    ),
  takes: pace.optional().describe('time per length of the deviation that is removed, added to the cycle'),
});
