import { z } from 'zod';
import { entry, name, word } from '../fields.ts';
import { comes, timing } from './timing.ts';

/** A station stands still. */
export const station = entry({
  disturbs: z.literal('station'),
  station: name.describe('the station that stands still'),
  cycle: word(['resumes', 'restarts', 'scraps'])
    .default('resumes')
    .describe('what becomes of the interrupted cycle'),
  ...timing,
}).superRefine(comes);
