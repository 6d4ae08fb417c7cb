import { z } from 'zod';
import { calendar } from './calendars.ts';
import { carrier } from './carriers.ts';
import { crew } from './crew.ts';
import { demand } from './demand.ts';
import { disturbance } from './disturbances.ts';
import { count, duration, entry, label, name, named, namedOrNone, positiveDuration, text } from './fields.ts';
import { MOST_SEEDS } from './limits.ts';
import { part } from './parts.ts';
import { response } from './responses.ts';
import { station } from './stations.ts';
import { stock } from './stocks.ts';

/** The version of the scenario format that this program reads. */
const FORMAT = 1;

const run = entry({
  'warm-up': duration.describe('time that passes before anything is counted'),
  length: positiveDuration.describe('time over which the measures are taken'),
  seeds: count(1, MOST_SEEDS).describe('how many runs each policy gets'),
  rolling: positiveDuration
    .optional()
    .describe('time that the rolling rate goes back over; left out, a thirtieth of the length'),
}).refine(({ rolling, length }) => rolling === undefined || (rolling <= length && rolling * 1000 >= length), {
  error: 'expected a time from a thousandth of the length up to all of it',
  path: ['rolling'],
});

/** The whole scenario file. */
export const schema = entry({
  mendline: z
    .literal(FORMAT, { error: `expected the version of the scenario format, ${FORMAT}` })
    .describe('version of the scenario format'),
  title: text.describe('what the scenario is called in reports'),
  about: text.describe('what the scenario shows, and where its figures come from'),
  run,
  stock: namedOrNone(stock).describe('bought-in material: sheet and mates'),
  parts: named(part).describe('what is formed, with its features').optional(),
  stations: named(station).describe('each does one operation and passes its parts on'),
  crew: namedOrNone(crew).describe('who is needed to repair, set up, load or unload'),
  carriers: namedOrNone(carrier).describe('what carries parts and circulates, so that the line is closed'),
  calendars: namedOrNone(calendar).describe('shifts and breaks, by name'),
  demand: demand.optional().describe('orders for good assemblies; left out, all that is made is taken'),
  disturbances: named(disturbance).describe('what goes wrong, and when').optional(),
  cases: z
    .record(label, z.array(name, { error: 'expected a list of disturbances; [] is the undisturbed line' }), {
      error: 'expected a mapping from names of cases to lists of disturbances',
    })
    .transform((entries) => Object.entries(entries).map(([name, disturbances]) => ({ name, disturbances })))
    .optional()
    .describe('disturbances that come together, by name; left out, the one case is all of them'),
  policies: z
    .record(label, z.array(response, { error: 'expected a list of responses; [] does nothing' }), {
      error: 'expected a mapping from policy names to lists of responses',
    })
    .transform((entries) => Object.entries(entries).map(([name, responses]) => ({ name, responses })))
    .describe('named lists of responses; the first policy is the one the others are compared with'),
});
