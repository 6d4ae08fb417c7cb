import { z } from 'zod';
import { buffer } from '../buffers.ts';
import { count, entry, named, share, spread } from '../fields.ts';
import { operating } from './operating.ts';

export const rework = entry({
  does: z.literal('rework'),
  ...operating,
  buffer,
  limit: count(1).describe('visits allowed to one part; at the next it is scrapped'),
  corrects: named(
    entry({
      removes: share.describe('share of the deviation from nominal that is removed'),
      'own-sd': spread.describe('standard deviation of what the rework itself adds'),
    }),
  ),
});
