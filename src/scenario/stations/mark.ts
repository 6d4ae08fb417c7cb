import { z } from 'zod';
import { buffer } from '../buffers.ts';
import { entry, share } from '../fields.ts';
import { operating } from './operating.ts';

export const mark = entry({
  does: z.literal('mark'),
  ...operating,
  buffer,
  'takes-hold': share.describe('chance that a mark can be read at all'),
});
