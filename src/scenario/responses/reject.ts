import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';

export const reject = entry({
  do: z.literal('reject'),
  at: name.describe('the gauging or assembling station whose rejects are sent'),
  to: name.describe('scrap, a rework station or, from a gauging station, pass'),
  ...whileHolds,
});
