import { z } from 'zod';
import { count, duration, entry, name, word } from '../fields.ts';

const SHOWN = [
  'working',
  'starved',
  'blocked',
  'down',
  'awaiting-technician',
  'awaiting-spare',
  'awaiting-handling',
  'set-up',
  'off-shift',
  'held',
] as const;

/** What a machine may be seen doing. */
export type ShownState = (typeof SHOWN)[number];

const state = word(SHOWN);

/** How long a station has been in a state. */
export const stationState = entry({
  station: name.describe('a station'),
  is: z
    .union([z.array(state).min(1, { error: 'expected at least one state' }), state])
    .transform((given) => (typeof given === 'string' ? [given] : given))
    .describe('a state, or a list of states that count as one'),
  for: duration.default(0).describe('how long it must have been so'),
  machines: count(1)
    .optional()
    .describe('how many of its machines must be so, each for so long; left out, all of them'),
});

export type StationCondition = z.output<typeof stationState>;
