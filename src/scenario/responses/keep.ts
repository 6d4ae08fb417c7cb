import { z } from 'zod';
import { count, entry, name } from '../fields.ts';

export const keep = entry({
  do: z.literal('keep'),
  stock: name,
  'on-hand': count(0).optional().describe('pieces at the start'),
  'reorder-at': count(0).optional(),
  order: count(1).optional(),
  'up-to': count(0).optional(),
}).describe('keeps a stock in another way than it says of itself, from the start on');
