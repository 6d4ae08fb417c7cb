import { count, duration, entry, positiveLength, spread } from './fields.ts';

/** The burr that a trimming tool leaves: it grows in proportion to the tool's cuts, and differs from part to part. */
export const burr = entry({
  first: spread.default(0).describe('its height when the tool is new'),
  per: count(1).describe('cuts of the tool after which it has grown as given here'),
  grows: spread.describe('how much higher it is after so many cuts'),
  'own-sd': spread.default(0).describe('standard deviation of what each part adds'),
  most: positiveLength.describe('height above which a part is deburred by hand before it goes on'),
  deburring: duration.describe('time that deburring adds to the cycle of such a part'),
});
