import { z } from 'zod';
import { duration, entry, positiveDuration, word } from './fields.ts';

const HOUR = 3600;
const DAY = 24 * HOUR;

/** The days of the week, from the one a run starts on. */
export const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

const pause = entry({
  after: duration.describe('time from the beginning of the shift'),
  lasts: positiveDuration,
});

const shift = entry({
  days: z
    .array(word(DAYS), { error: `expected a list of days out of ${DAYS.join(', ')}` })
    .min(1, { error: 'expected at least one day' })
    .describe('the days it begins on'),
  begins: duration
    .refine((begins) => begins < DAY, { error: 'a day has 24 h; expected a time from midnight below that' })
    .describe('counted from midnight'),
  lasts: positiveDuration
    .refine((lasts) => lasts <= DAY, { error: 'a shift lasts at most 24 h; a longer time is several shifts' })
    .describe('may run past midnight'),
  breaks: z
    .array(pause, { error: 'expected a list of breaks' })
    .optional()
    .transform((given) => given ?? []),
});

const SHIFTS = 'expected a list with at least one shift; without a calendar a station always works';

/** When a station or a crew works, week after week. A run starts on Monday at midnight. */
export const calendar = entry({
  shifts: z.array(shift, { error: SHIFTS }).min(1, { error: SHIFTS }),
});

export type CalendarSpec = z.output<typeof calendar> & { readonly name: string };
