import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';

export const reroute = entry({
  do: z.literal('reroute'),
  at: name.describe('the station whose parts go another way; its rejects stay as they are'),
  to: name.describe('the station that they go to meanwhile; no other needs to feed it'),
  ...whileHolds,
});
