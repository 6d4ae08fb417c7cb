import { z } from 'zod';
import { entry } from '../fields.ts';
import { someOfUsual } from './size.ts';
import { building, comes, timing } from './timing.ts';

/** Orders come more often, or less. */
export const demand = entry({
  disturbs: z.literal('demand'),
  to: someOfUsual.describe('how many orders come, in % of how many come otherwise'),
  ...building,
  ...timing,
}).superRefine(comes);
