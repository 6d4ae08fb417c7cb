import { z } from 'zod';
import type { BreakdownSpec } from '../breakdowns.ts';
import { every } from '../every.ts';
import { entry, word } from '../fields.ts';
import type { TaskSpec } from '../tasks.ts';
import { common } from './operating.ts';

/** What a source of arrivals has in common with the others, so that all stations can be treated alike. */
const UNTROUBLED = {
  machines: 1,
  speed: 1,
  handling: undefined,
  warmUp: undefined,
  setUps: [] as readonly TaskSpec[],
  maintenance: [] as readonly TaskSpec[],
  breakdowns: [] as readonly BreakdownSpec[],
  whileDown: 'unloads',
  // Nothing arrives out of hours: the time to the next arrival stands still and runs on with the next shift.
  shiftEnd: 'resumes',
} as const;

export const arrive = entry({
  does: z.literal('arrive'),
  ...common,
  every: every.describe('time from one arrival to the next'),
  'when-full': word(['waits', 'lost'])
    .default('waits')
    .describe(
      'a part that finds no room waits, and the next comes after it; or it is turned away and counted',
    ),
}).transform(({ every, ...rest }) => ({ ...rest, cycle: every, ...UNTROUBLED }));
