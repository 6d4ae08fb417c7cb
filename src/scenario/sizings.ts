import { z } from 'zod';
import { entry, label, name, positiveShare, text } from './fields.ts';

/** A number with what unit is written behind it; empty where none is. */
interface Amount {
  readonly number: number;
  readonly unit: string;
}

const AMOUNT = 'expected a number, or one with its unit, such as 12 or 30 min';

/** Read without knowing what it measures: the place that it is set at decides that. */
function readAmount(given: string | number): Amount | null {
  const [, number, unit] = /^\s*([+-]?(?:\d+(?:\.\d*)?|\.\d+))\s*(\S.*?)?\s*$/.exec(String(given)) ?? [];
  return number === undefined ? null : { number: Number(number), unit: unit ?? '' };
}

const amount = z.union([z.string(), z.number()], { error: AMOUNT }).transform((given, context) => {
  const read = readAmount(given);
  if (read) return read;
  context.addIssue({ code: 'custom', message: `"${given}": ${AMOUNT}` });
  return z.NEVER;
});

const written = z
  .union([z.string(), z.number()], { error: 'expected a value with its unit, such as 480 /h, 95 % or 12' })
  .transform(String);

const PLACE = 'expected a place in the scenario, such as stations/trimming/buffer, or a list of them';
const places = z
  .union([z.string().min(1), z.array(z.string().min(1)).min(1)], { error: PLACE })
  .transform((given) => (typeof given === 'string' ? [given] : given));

const COST = 'expected what one more costs: a number, not negative';

/** Along one side of a lattice there are at most so many. */
const MOST_STEPS = 1_000_000;
const ROUNDING = 1e-9;

/** One thing whose size is asked for. */
const size = entry({
  at: places.describe('where the scenario holds it: keys with "/" between them; several places get the same'),
  least: amount.describe('the smallest looked at'),
  most: amount.describe('the largest looked at'),
  step: amount.optional().describe('from one to the next; left out, 1'),
  cost: z
    .number({ error: COST })
    .min(0, { error: COST })
    .describe('what one of it costs, in the money of the sizing'),
}).transform(({ at, least, most, step = { number: 1, unit: least.unit }, cost }, context) => {
  const refuse = (path: string, message: string) => {
    context.addIssue({ code: 'custom', message, path: [path] });
    return z.NEVER;
  };
  const { unit } = least;
  for (const [key, { unit: other }] of Object.entries({ most, step }))
    if (other !== unit)
      return refuse(key, `expected the unit of "least", ${unit === '' ? 'none' : unit}; found ${other || 'none'}`); // biome-ignore format: one line reads better
  if (most.number < least.number) return refuse('most', 'expected no less than "least"');
  if (!(step.number > 0)) return refuse('step', 'expected a step above 0');
  const steps = (most.number - least.number) / step.number;
  if (Math.abs(steps - Math.round(steps)) > ROUNDING * Math.max(1, steps))
    return refuse('step', `expected steps that lead from ${least.number} to ${most.number} exactly`);
  if (steps >= MOST_STEPS) return refuse('step', `expected fewer than ${MOST_STEPS} steps`);
  const count = Math.round(steps) + 1;
  return { at, least: least.number, step: step.number, count, unit, cost };
});

const target = entry({
  measure: text.describe('a measure of reports, such as throughput; or fill rate, of a stock'),
  stock: name.optional().describe('the stock whose fill rate it is'),
  'at-least': written.optional().describe('what its mean must reach, with its unit'),
  'at-most': written.optional().describe('what its mean must not exceed, with its unit'),
  worth: written
    .optional()
    .describe('a target met by less than this may be taken for missed; left out, 1 % of the target'),
}).refine((given) => (given.atLeast === undefined) !== (given.atMost === undefined), {
  error: 'expected either "at-least" or "at-most"',
});

const SURE = 'expected a share above 50 % and below 100 %';

/** How much of something is enough at least cost. */
export const sizing = entry({
  policy: label.optional().describe('the policy that is followed; left out, the first'),
  money: text.default('money').describe('what costs are in, such as "crowns a week"'),
  sizes: z
    .record(label, size, { error: 'expected a mapping from names to sizes' })
    .refine((given) => Object.keys(given).length > 0, { error: 'expected one size or more' })
    .transform((entries) => Object.entries(entries).map(([name, own]) => ({ name, ...own })))
    .describe('what is to be sized, by name'),
  meets: z
    .array(target, { error: 'expected a list of targets' })
    .min(1, { error: 'expected one target or more' })
    .describe('targets that the means of measures must meet'),
  sure: positiveShare
    .refine((share) => share > 0.5 && share < 1, { error: SURE })
    .default(0.95)
    .describe('how surely what is said of the choice is right; left out, 95 %'),
}).refine(({ sizes }) => sizes.some(({ cost }) => cost > 0), {
  error: 'nothing costs anything, so the largest would do; give at least one size a cost above 0',
  path: ['sizes'],
});

export type SizingSpec = z.output<typeof sizing> & { readonly name: string };
export type SizeSpec = SizingSpec['sizes'][number];
export type TargetSpec = SizingSpec['meets'][number];

/** What stands at its places when it is so many steps above the least. */
export function sizeAt({ least, step, unit }: SizeSpec, steps: number): number | string {
  const number = Number((least + steps * step).toPrecision(12));
  return unit === '' ? number : `${number} ${unit}`;
}
