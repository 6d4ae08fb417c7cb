import { breakdown } from '../breakdowns.ts';
import { count, duration, entry, name, namedOrNone, positiveShare, word } from '../fields.ts';
import { handling } from '../handling.ts';
import { time } from '../laws.ts';
import { MOST_MACHINES } from '../limits.ts';
import { route } from '../routes.ts';
import { task } from '../tasks.ts';

/** What every station has. */
export const common = {
  to: route.describe('the next station, or "good" for finished goods; or several with the rule to choose by'),
  calendar: name.optional().describe('when the station works; left out, always'),
};

/** What every station has that works in cycles. */
export const operating = {
  ...common,
  cycle: time.describe('time for one part, one sheet when forming, or one batch'),
  machines: count(1, MOST_MACHINES).default(1).describe('identical machines that draw from one buffer'),
  speed: positiveShare.default(1).describe('a speed loss: the cycle time is divided by it'),
  handling: handling.optional(),
  'set-ups': namedOrNone(task).describe('what is done between cycles, such as a tool change'),
  maintenance: namedOrNone(task).describe('what is planned; waits for the end of the cycle'),
  'warm-up': entry({
    after: duration.describe('a heated station that did not work for longer than this warms up first'),
    takes: time,
  }).optional(),
  breakdowns: namedOrNone(breakdown).describe('ways of breaking down, by name'),
  'while-down': word(['unloads', 'nothing', 'loads-and-unloads'])
    .default('unloads')
    .describe('what the station still does while down; it unloads what is finished unless said otherwise'),
  'shift-end': word(['finishes', 'resumes', 'restarts', 'scraps'])
    .default('finishes')
    .describe('what becomes of the cycle under way when the shift ends'),
};
