import { z } from 'zod';
import { count, entry, name } from '../fields.ts';
import { comes, timing } from './timing.ts';

/** Some of a crew are away. */
export const crew = entry({
  disturbs: z.literal('crew'),
  crew: name.describe('the crew'),
  away: count(1).describe('how many of them are away; who is at work finishes what is under way'),
  ...timing,
}).superRefine(comes);
