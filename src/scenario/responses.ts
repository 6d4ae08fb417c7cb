import { z } from 'zod';
import { count, duration, entry, kinds, name, share, spread, word } from './fields.ts';
import { time } from './laws.ts';
import { match } from './matching.ts';

const watch = entry({
  at: name.describe('a gauging or assembling station'),
  sees: word(['misfits', 'off-limits', 'unread']),
  count: count(1),
  'of-last': count(1),
}).refine(({ count, ofLast }) => count <= ofLast, {
  error: '"count" cannot be more than "of-last"',
  path: ['count'],
});

const stopAndFix = entry({
  do: z.literal('stop-and-fix'),
  station: name.describe('the station to hold, and to free of what disturbs its settings or its marks'),
  watch,
  takes: time.describe('how long it is held'),
  'cool-down': duration.default(0).describe('after a fix, how long the watch is not heeded'),
});

const inspect = entry({
  do: z.literal('inspect'),
  at: name.describe('a gauging station'),
  every: count(1),
  'off-limits': name.optional().describe('pass, scrap or a rework station; left out, as the station says'),
});

const retune = entry({
  do: z.literal('retune'),
  setting: name,
  by: name.describe('the feature whose readings are followed'),
  weight: share.describe('weight of the newest reading in the running estimate (EWMA)'),
  deadband: spread.describe('leave the setting alone while the estimated offset is smaller than this'),
});

const rework = entry({
  do: z.literal('rework'),
  at: name.describe('the gauging or assembling station whose rejects are sent'),
  bench: name.describe('the rework station they are sent to'),
});

/** One response. */
export const response = kinds(
  'do',
  ['stop-and-fix', 'inspect', 'retune', 'match', 'rework'],
  [stopAndFix, inspect, retune, match, rework],
);

export type ResponseSpec = z.output<typeof response>;
export type ResponseOf<Kind extends ResponseSpec['do']> = Extract<ResponseSpec, { do: Kind }>;
