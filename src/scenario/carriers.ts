import type { z } from 'zod';
import { count, duration, entry, name } from './fields.ts';

/** Carriers that circulate, one to a part, so that only so many parts are between two stations. */
export const carrier = entry({
  number: count(1).describe('how many there are'),
  from: name.describe('the station that takes one for each part it loads'),
  to: name
    .optional()
    .describe(
      'the station after which a part gives its carrier back; left out, when the part leaves the line',
    ),
  return: duration.default(0).describe('time until a carrier given back is at "from" again'),
});

export type CarrierSpec = z.output<typeof carrier> & { readonly name: string };
