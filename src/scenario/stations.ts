import { z } from 'zod';
import { type BreakdownSpec, breakdown } from './breakdowns.ts';
import { buffer } from './buffers.ts';
import { every } from './every.ts';
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
  namedOrNone,
  positiveShare,
  ratio,
  share,
  spread,
  word,
} from './fields.ts';
import { handling } from './handling.ts';
import { time } from './laws.ts';
import { MOST_MACHINES } from './limits.ts';
import { route } from './routes.ts';
import { type TaskSpec, task } from './tasks.ts';

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

const common = {
  to: route.describe('the next station, or "good" for finished goods; or several with the rule to choose by'),
  calendar: name.optional().describe('when the station works; left out, always'),
};

const operating = {
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
  ...operating,
  takes: name
    .optional()
    .describe('a stock; each piece becomes a part. Left out where other stations feed this one'),
  buffer: buffer.optional(),
  batch: count(1).default(1).describe('parts worked on together; starts when so many wait'),
});

const form = entry({
  does: z.literal('form'),
  ...operating,
  takes: name.describe('the stock of sheet'),
  makes: name.describe('the kind of part'),
  'per-sheet': count(1).describe('parts from one sheet'),
  heating: ratio('time', '16 s/mm')
    .optional()
    .describe('heating time per mm of sheet thickness, added to the cycle'),
  settings: named(setting).optional(),
});

const trim = entry({ does: z.literal('trim'), ...operating, buffer });

const mark = entry({
  does: z.literal('mark'),
  ...operating,
  buffer,
  'takes-hold': share.describe('chance that a mark can be read at all'),
});

const gauge = entry({
  does: z.literal('gauge'),
  ...operating,
  buffer,
  every: count(1).describe('gauges one part in this many; the others pass in no time'),
  measures: named(entry({ bias: length.default(0), repeatability: spread })).describe('readings by feature'),
  'off-limits': name.describe('a part read outside its tolerance goes to: pass, scrap, or a rework station'),
  reader: reader.optional(),
});

const assemble = entry({
  does: z.literal('assemble'),
  ...operating,
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
  ...operating,
  buffer,
  limit: count(1).describe('visits allowed to one part; at the next it is scrapped'),
  corrects: named(
    entry({
      removes: share.describe('share of the deviation from nominal that is removed'),
      'own-sd': spread.describe('standard deviation of what the rework itself adds'),
    }),
  ),
});

/** What a source of arrivals has in common with the others, so that all stations can be treated alike. */
const UNTROUBLED = {
  machines: 1,
  speed: 1,
  handling: undefined,
  warmUp: undefined,
  setUps: [] as readonly TaskSpec[],
  maintenance: [] as readonly TaskSpec[],
  breakdowns: [] as readonly BreakdownSpec[],
  whileDown: 'unloads',
  // Nothing arrives out of hours: the time to the next arrival stands still and runs on with the next shift.
  shiftEnd: 'resumes',
} as const;

const arrive = entry({
  does: z.literal('arrive'),
  ...common,
  every: every.describe('time from one arrival to the next'),
  'when-full': word(['waits', 'lost'])
    .default('waits')
    .describe(
      'a part that finds no room waits, and the next comes after it; or it is turned away and counted',
    ),
}).transform(({ every, ...rest }) => ({ ...rest, cycle: every, ...UNTROUBLED }));

const words = ['work', 'form', 'trim', 'mark', 'gauge', 'assemble', 'rework', 'arrive'] as const;

/** One station. */
export const station = kinds('does', words, [work, form, trim, mark, gauge, assemble, rework, arrive]);

export type StationSpec = z.output<typeof station> & { readonly name: string };
export type SpecOf<Kind extends StationSpec['does']> = Extract<StationSpec, { does: Kind }>;
export type ReaderSpec = z.output<typeof reader>;

/** Whether parts start at this station. */
export function isSource(station: StationSpec): boolean {
  if (station.does === 'form' || station.does === 'arrive') return true;
  return station.does === 'work' && station.takes !== undefined;
}
