import { z } from 'zod';
import { entry, measured, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';

export const retarget = entry({
  do: z.literal('retarget'),
  setting: name,
  by: measured.describe('how far its target is moved; what retunes it comes on top'),
  ...whileHolds,
});
