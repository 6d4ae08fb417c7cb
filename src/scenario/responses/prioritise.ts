import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';

const FIRST = 'expected a list of stations, such as [forming, trimming]';

export const prioritise = entry({
  do: z.literal('prioritise'),
  crew: name,
  first: z
    .array(name, { error: FIRST })
    .min(1, { error: FIRST })
    .describe('stations whose calls are served before all others, in this order; among equals as ever'),
  ...whileHolds,
});
