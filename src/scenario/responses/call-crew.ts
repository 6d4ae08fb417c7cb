import { z } from 'zod';
import { count, entry, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';
import { time } from '../laws.ts';

export const callCrew = entry({
  do: z.literal('call-crew'),
  crew: name.describe('who gets help'),
  by: count(1).describe('how many more are there meanwhile, in the shifts of the crew'),
  'comes-after': time.optional().describe('time until they are there; left out, at once'),
  ...whileHolds,
});
