import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { shareThere } from './size.ts';
import { building, comes, timing } from './timing.ts';

/** A reader reads fewer marks. */
export const reader = entry({
  disturbs: z.literal('reader'),
  station: name.describe('the station with the reader'),
  to: shareThere.describe('chance that an attempt reads a mark, in % of what it is otherwise'),
  ...building,
  ...timing,
}).superRefine(comes);
