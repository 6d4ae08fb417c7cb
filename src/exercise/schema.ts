import { z } from 'zod';
import { count, entry, label, name, text, word } from '../scenario/fields.ts';
import { THEORIES } from './theories/index.ts';

/** The version of the exercise format that this program reads. */
const FORMAT = 1;
/** More runs than a class waits for. */
const MOST_SEEDS = 200;

const number = z.number({ error: 'expected a number, such as 12' });
const plain = z.union([z.string(), z.number(), z.boolean()], {
  error: 'expected a value as a scenario has it',
});
const place = z
  .string({ error: 'expected a place of the scenario, such as stations/trimming/buffer' })
  .min(1, { error: 'expected a place of the scenario, such as stations/trimming/buffer' });
const list = (what: string) =>
  z.array(label, { error: `expected a list of ${what}` }).min(2, { error: `expected at least two ${what}` });

const ranged = entry({
  at: z
    .union([place, z.array(place).min(1)], { error: 'expected a place, or a list of places' })
    .describe(
      'where in the scenario the value stands: keys, and numbers of list entries from 0, with "/" between',
    ),
  least: number,
  most: number,
  step: number.positive({ error: 'a step is above zero' }),
  starts: number.describe('where the knob stands at first'),
  unit: text.optional().describe('written behind the number, such as s or %; left out for plain numbers'),
}).refine(({ least, most }) => least < most, { error: '"least" must lie below "most"' });

const chosen = entry({
  choices: z
    .record(label, z.record(place, plain), {
      error: 'expected a mapping from choices to mappings from places to values',
    })
    .describe('what each choice writes where in the scenario'),
  starts: label,
});

const policies = entry({
  policies: list('policies').describe('policies of the scenario, of which one is followed'),
  starts: label,
});

const knob = z.union([ranged, chosen, policies]).describe('what may be turned');

const asked = {
  asks: text.describe('the question'),
};
const prediction = z.union([
  entry({
    ...asked,
    of: label.describe('what is watched and predicted, as a number'),
    with: z
      .record(label, plain)
      .optional()
      .describe('where the knobs stand then; left out, where they start'),
  }),
  entry({ ...asked, choices: list('choices'), right: label.describe('the choice that holds') }),
]);

/** The whole file of an exercise. */
export const exerciseSchema = entry({
  exercise: z
    .literal(FORMAT, { error: `expected the version of the exercise format, ${FORMAT}` })
    .describe('version of the exercise format'),
  title: text,
  teaches: text.describe('what a class learns from it, in a sentence or two'),
  source: text.describe('where this is published'),
  question: text,
  predict: z
    .array(prediction, { error: 'expected a list of predictions' })
    .min(1, { error: 'expected something to predict before anything is run' }),
  scenario: z
    .union([z.string().min(1), z.record(z.string(), z.unknown())], {
      error: 'expected the path of a scenario from this file, or a scenario itself',
    })
    .describe('the line: a file beside this one by its path, or all of it'),
  policy: name.optional().describe('the policy that is followed; left out, the first'),
  knobs: z
    .record(label, knob, { error: 'expected a mapping from names to knobs' })
    .refine((knobs) => Object.keys(knobs).length > 0, { error: 'expected at least one knob' }),
  watch: z
    .array(label, { error: 'expected a list of measures, such as [throughput, lead time]' })
    .min(1, { error: 'expected at least one measure to watch' })
    .describe('measures; of a stock, its name before them. The first is drawn'),
  seeds: count(2, MOST_SEEDS).default(30).describe('runs at each setting'),
  theory: word(THEORIES.map(({ name }) => name) as [string, ...string[]])
    .optional()
    .describe('the formula whose values are revealed'),
  discussion: text.describe('shown once all is revealed'),
});

export type ExerciseSpec = z.output<typeof exerciseSchema>;
export type KnobSpec = z.output<typeof knob>;
export type PredictionSpec = z.output<typeof prediction>;
