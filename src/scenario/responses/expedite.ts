import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';

export const expedite = entry({
  do: z.literal('expedite'),
  stock: name.describe('whose oldest order is asked to come sooner, and each that is placed meanwhile'),
  ...whileHolds,
});
