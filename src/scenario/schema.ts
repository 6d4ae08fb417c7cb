import { calendar } from './calendars.ts';
import { carrier } from './carriers.ts';
import { crew } from './crew.ts';
import { demand } from './demand.ts';
import { count, entry, named, namedOrNone, positiveDuration, text } from './fields.ts';
import { format } from './format.ts';
import { MOST_SEEDS } from './limits.ts';
import { part } from './parts.ts';
import { sections } from './sections.ts';
import { station } from './stations.ts';
import { stock } from './stocks.ts';
import { warmUp, warmUpOf } from './warm-up.ts';

const run = entry({
  'warm-up': warmUp,
  length: positiveDuration.describe('time over which the measures are taken'),
  seeds: count(1, MOST_SEEDS).describe('how many runs each policy gets'),
  rolling: positiveDuration
    .optional()
    .describe('time that the rolling rate goes back over; left out, a thirtieth of the length'),
})
  .refine(({ rolling, length }) => rolling === undefined || (rolling <= length && rolling * 1000 >= length), {
    error: 'expected a time from a thousandth of the length up to all of it',
    path: ['rolling'],
  })
  .transform(({ warmUp, ...rest }) => ({ ...rest, ...warmUpOf(warmUp) }));

/** The whole scenario file. */
export const schema = entry({
  mendline: format,
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
  disturbances: sections.disturbances.optional(),
  cases: sections.cases.optional(),
  policies: sections.policies,
  sizings: sections.sizings.optional(),
});
