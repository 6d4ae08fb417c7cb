import { z } from 'zod';
import { buffer } from '../buffers.ts';
import { correction } from '../correction.ts';
import { count, entry, named } from '../fields.ts';
import { operating } from './operating.ts';

export const rework = entry({
  does: z.literal('rework'),
  ...operating,
  buffer,
  limit: count(1).describe('visits allowed to one part; at the next it is scrapped'),
  corrects: named(correction),
});
