import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { comes, timing } from './timing.ts';

/** A supplier delivers nothing. */
export const supplier = entry({
  disturbs: z.literal('supplier'),
  stock: name.describe('the stock that is not delivered'),
  supplier: name.optional().describe('the one of several that fails; left out, all of them do'),
  ...timing,
}).superRefine(comes);
