import { z } from 'zod';
import { count, entry, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';

export const drawOnReserve = entry({
  do: z.literal('draw-on-reserve'),
  stock: name.describe('the stock whose reserve is put on hand each time this comes into force'),
  pieces: count(1).optional().describe('so many of it at a time, as far as there are; left out, all'),
  ...whileHolds,
});
