import type { z } from 'zod';
import { COUNTED, every } from './every.ts';
import { count, entry, name, word } from './fields.ts';
import { time } from './laws.ts';

/** One way in which a station breaks down. */
export const breakdown = entry({
  every: every.describe('time to failure'),
  counted: word(COUNTED).describe('whether that time runs only while working, or always'),
  repair: time.describe('time to repair, from when the repair begins'),
  cycle: word(['resumes', 'restarts', 'scraps']).describe('what becomes of the interrupted cycle'),
  crew: name.optional().describe('who repairs it; left out, the repair begins at once'),
  spare: name
    .optional()
    .describe('a stock: each repair takes one piece of it, and nobody is called before one is there'),
  priority: count(1).default(1).describe('among the calls for the crew; 1 is served first'),
});

export type BreakdownSpec = z.output<typeof breakdown> & { readonly name: string };
