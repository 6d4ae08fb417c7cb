import { z } from 'zod';
import { duration, entry, name, word } from './fields.ts';
import { MOST_COUNTED } from './limits.ts';

const NUMBER = `expected a whole number from 1 to ${MOST_COUNTED}; with nobody in the crew, breakdowns would never be repaired and nothing loaded`;
const PAIR = 'expected two stations, such as [forming, trimming]';

const move = entry({
  between: z.tuple([name, name], { error: PAIR }).describe('two stations; the move takes as long either way'),
  takes: duration,
});

/** Technicians who repair and set up, or handlers who load and unload: people or robots alike. */
export const crew = entry({
  number: z
    .int({ error: NUMBER })
    .min(1, { error: NUMBER })
    .max(MOST_COUNTED, { error: NUMBER })
    .describe('how many they are; each does one thing at a time'),
  serves: word(['first-come', 'priority', 'nearest'])
    .default('first-come')
    .describe('which of the waiting calls is served first'),
  move: duration.default(0).describe('time from one station to another'),
  moves: z
    .array(move, { error: 'expected a list of moves' })
    .optional()
    .transform((given) => given ?? [])
    .describe('moves that take another time than "move"'),
  calendar: name.optional().describe('when they are there; left out, always'),
});

export type CrewSpec = z.output<typeof crew> & { readonly name: string };
