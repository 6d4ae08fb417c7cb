import { z } from 'zod';
import {
  count,
  duration,
  entry,
  kinds,
  measured,
  name,
  positiveShare,
  ratio,
  spread,
  word,
} from './fields.ts';
import { whileHolds } from './in-force.ts';
import { time } from './laws.ts';
import { match } from './matching.ts';
import { watch } from './watches.ts';

const stopAndFix = entry({
  do: z.literal('stop-and-fix'),
  station: name.describe('the station to hold, and to free of what disturbs its settings or its marks'),
  watch: watch.describe('what it acts on: sights gone wrong, a chart of readings, or their capability'),
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
  setting: name.describe('the forming setting that is moved'),
  by: name.describe('the feature whose readings are followed'),
  rule: word(['ewma', 'deadbeat', 'step'])
    .default('ewma')
    .describe(
      'cancels a running estimate of the offset (EWMA), or the whole of the newest (deadbeat), or moves by a fixed step against it',
    ),
  weight: positiveShare
    .optional()
    .describe('of the rule ewma: weight of the newest reading in the running estimate'),
  step: measured.optional().describe('of the rule step: how far the setting is moved at a time'),
  deadband: spread.describe('leave the setting alone while the estimated offset is smaller than this'),
  gain: ratio('length', '-0.03 mm/°C')
    .optional()
    .describe('what the feature is believed to change per unit of the setting; left out, as designed'),
  'mean-of': count(1).default(1).describe('acts on the mean of so many readings at a time'),
}).superRefine(({ rule, weight, step, gain }, context) => {
  const say = (key: string, message: string) => context.addIssue({ code: 'custom', message, path: [key] });
  if (rule === 'ewma' && weight === undefined)
    say('weight', 'the rule ewma needs the weight of the newest reading, such as 20 %');
  if (rule !== 'ewma' && weight !== undefined)
    say('weight', `the rule ${rule} has no weight; leave it out, or take the rule ewma`);
  if (rule === 'step' && step === undefined)
    say('step', 'the rule step needs how far the setting is moved at a time, such as 0.5 °C');
  if (rule !== 'step' && step !== undefined)
    say('step', `the rule ${rule} has no step; leave it out, or take the rule step`);
  if (step !== undefined && step.value <= 0)
    say('step', 'a step is above zero; which way to go, the gain tells');
  if (gain !== undefined && gain.value === 0) say('gain', 'a gain of zero cannot guide a setting');
});

const rework = entry({
  do: z.literal('rework'),
  at: name.describe('the gauging or assembling station whose rejects are sent'),
  bench: name.describe('the rework station they are sent to'),
});

const hold = entry({
  do: z.literal('hold'),
  station: name.describe('the station that takes nothing new; it finishes its cycle'),
  ...whileHolds,
});

const slow = entry({
  do: z.literal('slow'),
  station: name,
  to: positiveShare.describe('share of its speed that it works at, from its next cycle on'),
  ...whileHolds,
});

const expedite = entry({
  do: z.literal('expedite'),
  stock: name.describe('whose oldest order is asked to come sooner, and each that is placed meanwhile'),
  ...whileHolds,
});

const retarget = entry({
  do: z.literal('retarget'),
  setting: name,
  by: measured.describe('how far its target is moved; what retunes it comes on top'),
  ...whileHolds,
});

const substitute = entry({
  do: z.literal('substitute'),
  for: name.describe('the stock that is not taken meanwhile'),
  by: name.describe('what stands in for it: what would take one takes this'),
  ...whileHolds,
});

const buildAhead = entry({
  do: z.literal('build-ahead'),
  at: name.describe('an assembling station'),
  without: name.describe('the mate that parts are worked on without and put aside'),
  'up-to': count(1).describe('how many parts may be put aside at once'),
  finish: time.describe('time to finish such a part once the mate is there, the oldest first, before others'),
  ...whileHolds,
});

const keep = entry({
  do: z.literal('keep'),
  stock: name,
  'on-hand': count(0).optional().describe('pieces at the start'),
  'reorder-at': count(0).optional(),
  order: count(1).optional(),
  'up-to': count(1).optional(),
}).describe('keeps a stock in another way than it says of itself, from the start on');

const cannibalise = entry({
  do: z.literal('cannibalise'),
  spare: name.describe('the stock that a repair may wait for'),
  from: z
    .array(name)
    .min(1, { error: 'expected at least one station that the spare may be taken out of' })
    .describe(
      'stations whose machines it is taken out of while there is none, the first choice first; they then wait for one',
    ),
});

/** One response. */
export const response = kinds(
  'do',
  [
    'stop-and-fix',
    'inspect',
    'retune',
    'match',
    'rework',
    'hold',
    'slow',
    'expedite',
    'retarget',
    'substitute',
    'build-ahead',
    'cannibalise',
    'keep',
  ],
  [
    stopAndFix,
    inspect,
    retune,
    match,
    rework,
    hold,
    slow,
    expedite,
    retarget,
    substitute,
    buildAhead,
    cannibalise,
    keep,
  ],
);

export type ResponseSpec = z.output<typeof response>;
export type ResponseOf<Kind extends ResponseSpec['do']> = Extract<ResponseSpec, { do: Kind }>;
