import { z } from 'zod';
import { entry, increasedShare, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';

export const speedUp = entry({
  do: z.literal('speed-up'),
  station: name,
  to: increasedShare.describe(
    'share of its speed that it works at, from its next cycle on; what it makes is no worse for it',
  ),
  ...whileHolds,
});
