import { z } from 'zod';
import { buffer } from '../buffers.ts';
import { count, entry, name } from '../fields.ts';
import { operating } from './operating.ts';

export const work = entry({
  does: z.literal('work'),
  ...operating,
  takes: name
    .optional()
    .describe('a stock; each piece becomes a part. Left out where other stations feed this one'),
  buffer: buffer.optional(),
  batch: count(1).default(1).describe('parts worked on together; starts when so many wait'),
});
