import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';

export const substitute = entry({
  do: z.literal('substitute'),
  for: name.describe('the stock that is not taken meanwhile'),
  by: name.describe('what stands in for it: what would take one takes this'),
  ...whileHolds,
});
