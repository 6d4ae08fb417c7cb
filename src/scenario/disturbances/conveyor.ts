import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { shareThere } from './size.ts';
import { building, comes, timing } from './timing.ts';

/** A conveyor moves slower, or not at all. */
export const conveyor = entry({
  disturbs: z.literal('conveyor'),
  station: name.describe('the station that the conveyor leads to'),
  to: shareThere.describe('speed of the belt, in % of what it is otherwise; at 0 % it stands'),
  ...building,
  ...timing,
}).superRefine(comes);
