import { z } from 'zod';
import { entry, name } from '../fields.ts';

export const cannibalise = entry({
  do: z.literal('cannibalise'),
  spare: name.describe('the stock that a repair may wait for'),
  from: z
    .array(name)
    .min(1, { error: 'expected at least one station that the spare may be taken out of' })
    .describe(
      'stations whose machines it is taken out of while there is none, the first choice first; they then wait for one',
    ),
});
