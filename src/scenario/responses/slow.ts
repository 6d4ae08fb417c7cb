import { z } from 'zod';
import { entry, name, positiveShare } from '../fields.ts';
import { whileHolds } from '../in-force.ts';

export const slow = entry({
  do: z.literal('slow'),
  station: name,
  to: positiveShare.describe('share of its speed that it works at, from its next cycle on'),
  ...whileHolds,
});
