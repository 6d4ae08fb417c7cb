import type { z } from 'zod';
import { duration, entry, name } from '../fields.ts';

/** A span of the run's own time, the warm-up included. */
export const span = entry({
  from: duration.optional().describe('when it begins, from the start of the run on; left out, at the start'),
  to: duration.optional().describe('when it ends; left out, never'),
}).superRefine(({ from, to }, context) => {
  const say = (key: string, message: string) => context.addIssue({ code: 'custom', message, path: [key] });
  if (from === undefined && to === undefined) say('from', 'expected a time, such as 2 h, or a "to"');
  if (to !== undefined && to <= (from ?? 0))
    say('to', 'it ends before it begins; expected a later time than "from"');
});

/** While a calendar works. */
export const working = entry({
  calendar: name.describe('a calendar: holds while it works, not in its breaks'),
});

export type SpanCondition = z.output<typeof span>;
export type CalendarCondition = z.output<typeof working>;
