import { z } from 'zod';
import { entry } from '../fields.ts';

export const foresee = entry({
  do: z.literal('foresee'),
}).describe(
  'makes of the policy a bound: what it would be to know true values and all disturbances to come; the others are told how much of that they recovered',
);
