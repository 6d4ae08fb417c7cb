import { z } from 'zod';
import { count, entry, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';
import { time } from '../laws.ts';

export const buildAhead = entry({
  do: z.literal('build-ahead'),
  at: name.describe('an assembling station'),
  without: name.describe('the mate that parts are worked on without and put aside'),
  'up-to': count(1).describe('how many parts may be put aside at once'),
  finish: time.describe('time to finish such a part once the mate is there, the oldest first, before others'),
  ...whileHolds,
});
