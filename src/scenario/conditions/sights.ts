import type { z } from 'zod';
import { count, entry, name, word } from '../fields.ts';
import { SIGHTS } from '../watches.ts';

/** Sights gone wrong among the last so many: a signal when there are so many of them, or so few. */
export const seen = entry({
  at: name.describe('a gauging or assembling station'),
  sees: word(SIGHTS),
  count: count(1).optional().describe('signals when so many of the last went wrong'),
  'at-most': count(0).optional().describe('instead: signals when of so many no more than this went wrong'),
  'of-last': count(1),
}).superRefine(({ count, atMost, ofLast }, context) => {
  const say = (key: string, message: string) => context.addIssue({ code: 'custom', message, path: [key] });
  if (count === undefined && atMost === undefined)
    say('count', 'expected "count" (signals at so many) or "at-most" (signals at so few)');
  else if (count !== undefined && atMost !== undefined)
    say('at-most', 'give either "count" or "at-most"; two conditions go under "any:"');
  else if (count !== undefined && count > ofLast) say('count', '"count" cannot be more than "of-last"');
  else if (atMost !== undefined && atMost >= ofLast)
    say('at-most', '"at-most" must be less than "of-last", or it always signals');
});

export type SightCondition = z.output<typeof seen>;
