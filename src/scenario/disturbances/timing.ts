import type { z } from 'zod';
import { count, entry, name, positiveDuration } from '../fields.ts';
import { time } from '../laws.ts';

const after = entry({
  parts: count(1).describe('how many parts, counted from the start of the run'),
  of: name
    .optional()
    .describe('the station that has finished them; left out, those that left the line as good'),
});

const burst = entry({
  times: count(2).describe('how often it comes each time'),
  apart: time.describe('from its end to its next beginning within the burst'),
});

/**
 * When a disturbance comes. A pulse is a short `for`; an outage is a disturbance of what is either on or off; what comes
 * at random has distributions for `at` and `again-after`. What comes after a count of parts comes when the line has made
 * them, so it may come at another time under another policy; all others come at the same time under each.
 */
export const timing = {
  at: time.optional().describe('when it first begins, counted from the start of the run'),
  after: after.optional().describe('instead of "at": it first begins when so many parts are finished'),
  for: time.describe('how long it lasts unless it is fixed'),
  'again-after': time.optional().describe('from its end to its next beginning; left out, it comes once'),
  burst: burst.optional().describe('it comes several times in a row; "again-after" counts from the last end'),
};

/**
 * How what has a size comes and goes. Without these keys it is a step. With `ramp` it builds up evenly, and a ramp as long
 * as it lasts is a drift or a degradation; a longer one is cut off by its end. With `fades` it goes as evenly as it came.
 */
export const building = {
  ramp: positiveDuration.optional().describe('time over which it builds up; left out, it is a step'),
  fades: positiveDuration
    .optional()
    .describe(
      'time over which it goes once it has lasted; only then it has ended. Left out, it goes at once',
    ),
};

/** Says so unless exactly one of `at` and `after` tells when it comes. */
export function comes(
  given: { readonly at?: unknown; readonly after?: unknown },
  context: z.RefinementCtx,
): void {
  if (given.at !== undefined && given.after !== undefined) {
    const message = '"at" tells when it comes already; take out "at" or "after"';
    context.addIssue({ code: 'custom', message, path: ['after'] });
  }
  if (given.at === undefined && given.after === undefined) {
    const message =
      '"at" is missing: expected a time with its unit, such as 2 h, or "after" a count of parts';
    context.addIssue({ code: 'custom', message });
  }
}

/** Says so unless at least one of the sizes is given. */
export const someOf =
  (keys: readonly string[], example: string) =>
  (given: object, context: z.RefinementCtx): void => {
    const camel = (key: string) => key.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
    if (keys.some((key) => (given as Record<string, unknown>)[camel(key)] !== undefined)) return;
    const others = keys.slice(1).map((key) => `"${key}"`);
    const message = `"${keys[0]}" is missing: expected ${example}, or ${others.join(' or ')}`;
    context.addIssue({ code: 'custom', message });
  };
