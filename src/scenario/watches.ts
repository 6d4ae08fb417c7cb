import { z } from 'zod';
import { CAPABILITIES } from '../statistics/capability.ts';
import { RUN_RULES } from '../statistics/charts/run-rules.ts';
import { untold } from './conditions/hidden.ts';
import { count, entry, kinds, length, name, positiveLength, positiveShare, share, word } from './fields.ts';

/** A plain number above a bound. */
function number(least: 'above zero' | 'not negative', example: number) {
  const error = `expected a plain number, ${least}, such as ${example}`;
  return least === 'above zero'
    ? z.number({ error }).positive({ error })
    : z.number({ error }).min(0, { error });
}

/** What goes wrong or not where it can be seen. */
export const SIGHTS = ['misfits', 'off-limits', 'unread'] as const;

const sights = entry({
  at: name.describe('a gauging or assembling station'),
  sees: word(SIGHTS),
  count: count(1),
  'of-last': count(1),
}).refine(({ count, ofLast }) => count <= ofLast, {
  error: '"count" cannot be more than "of-last"',
  path: ['count'],
});

const readings = {
  at: name.describe('a gauging station'),
  of: name.describe('the feature whose readings there it follows'),
};

/** What every chart has, besides its own limits. */
const charted = {
  ...readings,
  centre: length.optional().describe('of the chart; left out, what the feature should be, or what it learns'),
  sigma: positiveLength.optional().describe('standard deviation of single readings while all is well'),
  learns: count(2)
    .optional()
    .describe('instead of sigma: takes sigma and the centre from the first so many readings'),
  'mean-of': count(1).default(1).describe('how many readings make one point of the chart'),
};

/** What it says of a chart that is told no sigma, or two. */
const SCALE = 'expected exactly one of "sigma" (0.07 mm) and "learns" (from the first 50 readings)';
const scaled = ({ sigma, learns }: { readonly sigma?: unknown; readonly learns?: unknown }) =>
  (sigma === undefined) !== (learns === undefined);

export const chart = kinds(
  'chart',
  ['shewhart', 'cusum', 'ewma'],
  [
    entry({
      chart: z.literal('shewhart'),
      ...charted,
      limit: number('above zero', 3).describe('a point further from the centre signals, in sigmas'),
      'run-rules': z
        .array(word(RUN_RULES), { error: `expected a list of ${RUN_RULES.join(', ')}` })
        .refine((given) => new Set(given).size === given.length, { error: 'a rule is listed twice' })
        .default([])
        .describe(
          'signals, too, at so many points on one side of the centre: 2 of 3 beyond 2 sigmas, 4 of 5 beyond 1, 8 in a row',
        ),
    }).refine(scaled, { error: SCALE }),
    entry({
      chart: z.literal('cusum'),
      ...charted,
      slack: number('not negative', 0.5).describe('half the shift to be found, in sigmas'),
      limit: number('above zero', 5).describe('a larger sum signals, in sigmas'),
      'head-start': share.default(0).describe('share of the limit at which the sums start'),
      side: word(['up', 'down', 'both']).default('both').describe('which shifts it looks for'),
    }).refine(scaled, { error: SCALE }),
    entry({
      chart: z.literal('ewma'),
      ...charted,
      weight: positiveShare.describe('weight of the newest point in the running mean'),
      limit: number('above zero', 2.86).describe('in sigmas of the running mean'),
    }).refine(scaled, { error: SCALE }),
  ],
);

export const capability = entry({
  ...readings,
  capability: word(CAPABILITIES).describe(
    'cp and cpk by the spread from one reading to the next, pp and ppk by that of all; k heeds where the mean is',
  ),
  below: number('above zero', 1.33).describe('acts when the capability is lower than this'),
  'of-last': count(2).describe('how many readings the capability is taken from'),
  surely: z
    .optional(share)
    .refine((given) => given === undefined || (given > 0.5 && given < 1), {
      error: 'expected more than 50 % and less than 100 %, such as 95 %',
    })
    .describe('acts only when the upper confidence limit of the capability is below, at this level'),
});

/** What tells a response to act: sights gone wrong, a chart of readings, or their capability. */
export const watch = z.union([sights, chart, capability], {
  error: ({ input }) =>
    typeof input === 'object' && input !== null
      ? untold(input, '"chart" or "capability"')
      : 'expected a mapping with "at" and "sees", or with "at", "of" and "chart" or "capability"',
});

type WatchSpec = z.output<typeof watch>;
export type SightWatch = z.output<typeof sights>;
export type ChartWatch = z.output<typeof chart>;
export type CapabilityWatch = z.output<typeof capability>;
/** One of a feature's readings at a gauge. */
export type ReadingWatch = ChartWatch | CapabilityWatch;

export const isSights = (spec: WatchSpec): spec is SightWatch => 'sees' in spec;
export const isChart = (spec: object): spec is ChartWatch => 'chart' in spec;
