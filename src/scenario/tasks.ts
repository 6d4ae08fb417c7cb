import type { z } from 'zod';
import { COUNTED, every } from './every.ts';
import { count, entry, name, word } from './fields.ts';
import { time } from './laws.ts';

/** Something done at a station between two cycles, after so many cycles or so much time: a set-up, or maintenance. */
export const task = entry({
  cycles: count(1).optional().describe('after this many cycles'),
  every: every.optional().describe('after this much time since it was last done'),
  counted: word(COUNTED)
    .optional()
    .describe('whether the time of "every" runs only while working, or always'),
  takes: time.describe('how long it takes, from when it begins'),
  spare: name
    .optional()
    .describe('the stock that it takes a piece of, such as a tool; it waits until there is one'),
  crew: name.optional().describe('who does it; left out, it begins at once'),
  priority: count(1).default(1).describe('among the calls for the crew; 1 is served first'),
}).superRefine(({ cycles, every, counted }, context) => {
  const say = (message: string, path: string[] = []) => context.addIssue({ code: 'custom', message, path });
  if ((cycles === undefined) === (every === undefined)) {
    say('expected exactly one of "cycles" (a count, such as 500) and "every" (a time, such as 8 h)');
  } else if (every !== undefined && counted === undefined) {
    say(`"counted" is missing: say whether "every" runs by ${COUNTED.join(' or by ')} time`);
  } else if (cycles !== undefined && counted !== undefined) {
    say('"counted" belongs to "every"; cycles are counted one by one, so take it out', ['counted']);
  }
});

export type TaskSpec = z.output<typeof task> & { readonly name: string };
