import { z } from 'zod';
import {
  MOST_BY_RANGES,
  type StudyReadings,
  studyByAnova,
  studyByRanges,
} from '../statistics/gauge-study.ts';
import { entry, word } from './fields.ts';
import { readQuantity, unitsOf } from './units.ts';

const READINGS =
  'expected the readings by appraiser, trial and part: [[[part 1, part 2, ...], [trial 2], ...], [appraiser 2], ...]';
const LENGTHS = unitsOf('length') as readonly [string, ...string[]];

const trial = z.array(z.number({ error: 'expected a number, in the unit of the study' }), {
  error: READINGS,
});

interface Given {
  readonly by: 'anova' | 'ranges';
  readonly readings: StudyReadings;
}

/** What is wrong with the numbers of appraisers, trials and parts, and where; undefined when nothing is. */
function misshapen({ by, readings }: Given): { message: string; path: PropertyKey[] } | undefined {
  const trials = readings[0]?.length ?? 0;
  const parts = readings[0]?.[0]?.length ?? 0;
  for (const [i, own] of readings.entries()) {
    if (own.length !== trials)
      return {
        message: `expected as many trials as the first appraiser has: ${trials}, not ${own.length}`,
        path: ['readings', i],
      };
    for (const [j, row] of own.entries())
      if (row.length !== parts)
        return {
          message: `expected as many parts as the first trial has: ${parts}, not ${row.length}`,
          path: ['readings', i, j],
        };
  }
  const most = by === 'ranges' ? MOST_BY_RANGES : { appraisers: 100, trials: 100, parts: 1000 };
  const numbers = { appraisers: readings.length, trials, parts };
  for (const what of ['appraisers', 'trials', 'parts'] as const)
    if (numbers[what] < 2 || numbers[what] > most[what])
      return {
        message: `a study by ${by} has 2 to ${most[what]} ${what}, but this one has ${numbers[what]}`,
        path: ['readings'],
      };
  const first = readings[0]![0]![0]!;
  if (readings.flat(2).every((reading) => reading === first))
    return { message: 'all readings are the same, so they tell nothing of the gauge', path: ['readings'] };
  return undefined;
}

/** A gauge study, evaluated: standard deviations in mm. */
export const gaugeStudy = entry({
  unit: word(LENGTHS).describe('unit of the readings'),
  by: word(['anova', 'ranges'])
    .default('anova')
    .describe('analysis of variance, or averages and ranges; both as AIAG has them'),
  readings: z
    .array(z.array(trial, { error: READINGS }), { error: READINGS })
    .describe('one list for each appraiser, of one list for each trial, of one number for each part'),
})
  .superRefine((given, context) => {
    const wrong = misshapen(given);
    if (wrong) context.addIssue({ code: 'custom', ...wrong });
  })
  .transform(({ unit, by, readings }) => {
    const factor = readQuantity(`1 ${unit}`)!.value;
    const lengths = readings.map((own) => own.map((row) => row.map((reading) => reading * factor)));
    return { by, ...(by === 'anova' ? studyByAnova(lengths) : studyByRanges(lengths)) };
  });
