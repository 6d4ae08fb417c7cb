import type { z } from 'zod';
import { duration, entry, name, positiveDuration } from '../fields.ts';

/** A span of the run's own time, the warm-up included, by when it begins or by its end alone. */
export const spans = [
  entry({
    from: duration.describe('when it begins, from the start of the run on'),
    to: duration.optional().describe('when it ends; left out, never'),
  }).refine(({ from, to }) => to === undefined || to > from, {
    error: 'it ends before it begins; expected a later time than "from"',
    path: ['to'],
  }),
  entry({ to: positiveDuration.describe('when it ends, from the start of the run on') }).transform(
    ({ to }) => ({
      from: 0,
      to,
    }),
  ),
] as const;

/** While a calendar works. */
export const working = entry({
  calendar: name.describe('a calendar: holds while it works, not in its breaks'),
});

export type SpanCondition = z.output<(typeof spans)[number]>;
export type CalendarCondition = z.output<typeof working>;
