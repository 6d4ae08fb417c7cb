import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';

export const hold = entry({
  do: z.literal('hold'),
  station: name.describe('the station that takes nothing new; it finishes its cycle'),
  ...whileHolds,
});
