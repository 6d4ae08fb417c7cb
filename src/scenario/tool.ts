import { z } from 'zod';
import { burr } from './burr.ts';
import { entry, name } from './fields.ts';

/** The cutting tool of each machine of a trimming station; its cuts count the parts it has trimmed. */
export const tool = entry({
  'renewed-by': z
    .array(name, { error: 'expected a list of set-ups, maintenance or breakdowns of this station' })
    .default([])
    .describe(
      'the set-ups, maintenance and breakdowns of this station that end with a new tool; left out, it is never renewed',
    ),
  burr: burr.optional(),
});
