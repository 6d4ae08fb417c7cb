import { z } from 'zod';
import { meanOf } from '../kernel/distributions/index.ts';
import {
  count,
  duration,
  entry,
  featureOrMates,
  kinds,
  length,
  measured,
  name,
  named,
  ratio,
  share,
  spread,
  word,
} from './fields.ts';
import { time } from './laws.ts';
import { MOST_COUNTED } from './limits.ts';

const breakdown = entry({
  every: time
    .refine((law) => meanOf(law) > 0, { error: 'the time to failure must be above zero' })
    .describe('time to failure'),
  counted: word(['working', 'clock']).describe('whether that time runs only while working, or always'),
  repair: time,
  cycle: word(['resumes', 'restarts', 'scraps']).describe('what becomes of the interrupted cycle'),
});

const reader = entry({
  reads: share.describe('chance that a mark that took is read'),
  unread: z
    .union([
      entry({ 'by-hand': duration.describe('time to identify the part by hand') }),
      word(['pass', 'scrap']),
    ])
    .describe(
      'what happens to a part whose mark is not read: pass on anonymously, scrap, or identify by hand',
    ),
});

const NEXT = 'say where its parts go, to a station by its name or to "good"';

const common = {
  cycle: time.describe('time for one part, or one sheet when forming'),
  to: z
    .string({ error: NEXT })
    .min(1, { error: NEXT })
    .describe('the next station, or "good" for finished goods'),
  breakdown: breakdown.optional(),
};
const PLACES = `expected a whole number of places up to ${MOST_COUNTED}, or unlimited`;
const buffer = z
  .union([
    word(['unlimited']),
    z.int({ error: PLACES }).min(0, { error: PLACES }).max(MOST_COUNTED, { error: PLACES }),
  ])
  .describe('places for parts waiting in front of the station');

const setting = entry({
  target: measured,
  'cycle-sd': measured
    .refine(({ value }) => value >= 0, { error: 'a standard deviation is not negative' })
    .optional()
    .describe('standard deviation from cycle to cycle'),
}).refine(({ target, cycleSd }) => cycleSd === undefined || cycleSd.dimension === target.dimension, {
  error: '"cycle-sd" and "target" have units of different kinds',
  path: ['cycle-sd'],
});

const work = entry({
  does: z.literal('work'),
  ...common,
  takes: name
    .optional()
    .describe('a stock; each piece becomes a part. Left out where other stations feed this one'),
  buffer: buffer.optional(),
});

const form = entry({
  does: z.literal('form'),
  ...common,
  takes: name.describe('the stock of sheet'),
  makes: name.describe('the kind of part'),
  'per-sheet': count(1).describe('parts from one sheet'),
  heating: ratio('time', '16 s/mm')
    .optional()
    .describe('heating time per mm of sheet thickness, added to the cycle'),
  settings: named(setting).optional(),
});

const trim = entry({ does: z.literal('trim'), ...common, buffer });

const mark = entry({
  does: z.literal('mark'),
  ...common,
  buffer,
  'takes-hold': share.describe('chance that a mark can be read at all'),
});

const gauge = entry({
  does: z.literal('gauge'),
  ...common,
  buffer,
  every: count(1).describe('gauges one part in this many; the others pass in no time'),
  measures: named(entry({ bias: length.default(0), repeatability: spread })).describe('readings by feature'),
  'off-limits': name.describe('a part read outside its tolerance goes to: pass, scrap, or a rework station'),
  reader: reader.optional(),
});

const assemble = entry({
  does: z.literal('assemble'),
  ...common,
  buffer,
  takes: z
    .array(name, { error: 'expected a list of stocks' })
    .min(1, { error: 'expected at least one stock' }),
  'without-mates': word(['wait', 'scrap'])
    .default('wait')
    .describe('what happens to a part when mates have run out'),
  fits: z
    .array(
      entry({
        hole: featureOrMates.describe('the outer feature: one of the part, or MATE.FEATURE'),
        shaft: featureOrMates.describe('the inner feature: one of the part, or MATE.FEATURE'),
        least: length.describe('least clearance, hole minus shaft; negative allows interference'),
        most: length.describe('most clearance'),
      }).refine(({ least, most }) => least < most, { error: '"least" must lie below "most"' }),
      { error: 'expected a list of mating pairs' },
    )
    .describe('mating pairs; the worst decides'),
  misfit: name.describe('a part that does not fit goes to: scrap, or a rework station'),
  'mate-tries': count(1).default(1).describe('attempts before a mate that does not fit is thrown away'),
  reader: reader.optional(),
});

const rework = entry({
  does: z.literal('rework'),
  ...common,
  buffer,
  limit: count(1).describe('visits allowed to one part; at the next it is scrapped'),
  corrects: named(
    entry({
      removes: share.describe('share of the deviation from nominal that is removed'),
      'own-sd': spread.describe('standard deviation of what the rework itself adds'),
    }),
  ),
});

const words = ['work', 'form', 'trim', 'mark', 'gauge', 'assemble', 'rework'] as const;

/** One station. */
export const station = kinds('does', words, [work, form, trim, mark, gauge, assemble, rework]);

export type StationSpec = z.output<typeof station> & { readonly name: string };
export type SpecOf<Kind extends StationSpec['does']> = Extract<StationSpec, { does: Kind }>;
export type ReaderSpec = z.output<typeof reader>;
export type BreakdownSpec = z.output<typeof breakdown>;

/** Whether parts start at this station. */
export function isSource(station: StationSpec): boolean {
  return station.does === 'form' || (station.does === 'work' && station.takes !== undefined);
}
