import type { Attempt, Tried } from '../../exercise/attempt.ts';
import type { Exercise } from '../../exercise/exercise.ts';
import { expectedAt, policyAt, sameSetting, scenarioAt, startOf } from '../../exercise/setting.ts';
import { estimateOf, watchedOf } from '../../exercise/trial.ts';
import type { Watched } from '../../exercise/watched.ts';
import type { Estimate } from '../../statistics/estimate.ts';
import { type Cell, csvText } from '../csv.ts';
import { estimateCells, expectedText } from './trial-tables.ts';

/** What the runs of a page were made from; other runs are not to be laid beside them. */
export interface MadeFrom {
  readonly version: string;
  /** Of the exercise's text. */
  readonly sha256: string;
  /** Of the text of the scenario that it names; null where it holds its own. */
  readonly scenario: string | null;
}

/** What was found of one measure at one setting; null where the runs give no value, or theory has none. */
interface Found {
  readonly watched: Watched;
  readonly estimate: Estimate | null;
  /** Only once it is revealed. */
  readonly theory: number | null;
}

function foundAt(exercise: Exercise, { setting, runs, failure }: Tried, revealed: boolean): Found[] {
  if (failure !== null) return [];
  const expected = revealed ? expectedAt(exercise, setting) : null;
  return watchedOf(scenarioAt(exercise, setting), exercise.watch).map((watched, i) => ({
    ...{ watched, estimate: estimateOf(runs, i, watched), theory: expected?.[watched.name] ?? null },
  }));
}

/** What the engine counts in, where that is not what is shown; `1` is a plain ratio. */
const COUNTED_IN: Readonly<Record<string, string>> = { '%': '1', min: 's' };

/** The unit of a number of the engine. */
export const countedIn = ({ shown }: Pick<Watched, 'shown'>): string => COUNTED_IN[shown.unit] ?? shown.unit;

function measureJson({ watched, estimate, theory }: Found) {
  const [mean, interval] = estimateCells(watched, estimate);
  const { value, ...rest } = estimate ?? { value: null, lower: null, upper: null };
  return {
    name: watched.name,
    unit: countedIn(watched),
    ...{ mean: value, ...rest, theory },
    shown: {
      unit: watched.shown.unit,
      ...{ mean, interval, theory: theory === null ? null : expectedText(watched, estimate, theory) },
    },
  };
}

function predictionsJson(exercise: Exercise, written: readonly string[]) {
  const all = watchedOf(scenarioAt(exercise, startOf(exercise)), exercise.watch);
  return exercise.predictions.map((prediction, i) => {
    const { asks } = prediction;
    const given = written[i] ?? null;
    if (prediction.kind === 'choice') return { asks, predicted: given };
    const unit = all.find(({ name }) => name === prediction.of)!.shown.unit;
    return { asks, of: prediction.of, predicted: given === null ? null : Number(given), unit };
  });
}

const knobsJson = ({ knobs }: Exercise, { setting }: Tried) =>
  knobs.map((knob) => ({
    name: knob.name,
    value: setting[knob.name]!,
    unit: (knob.kind === 'number' && knob.unit) || null,
  }));

/** What is handed in: each number unrounded in its unit, and beside it as the page shows it. */
export function answersJson(exercise: Exercise, attempt: Attempt, { version, sha256, scenario }: MadeFrom) {
  const { name, predictions, tried, revealed, notes } = attempt;
  return {
    exercise: exercise.title,
    exercise_sha256: sha256,
    scenario_sha256: scenario,
    mendline: version,
    name,
    predictions: predictionsJson(exercise, predictions),
    settings: tried.map((one) => ({
      knobs: knobsJson(exercise, one),
      policy: policyAt(exercise, one.setting),
      failure: one.failure,
      seeds: one.runs.length,
      measures: foundAt(exercise, one, revealed).map(measureJson),
    })),
    revealed,
    notes,
  };
}

/** In the unit that is shown, without the digits that binary arithmetic adds. */
const shownNumber = ({ shown }: Watched, number: number | null | undefined) =>
  number === null || number === undefined ? null : Number((number * shown.factor).toPrecision(12));

/** The same as a table: a row for each measure at each setting, numbers in the unit that is shown. */
export function answersCsv(exercise: Exercise, attempt: Attempt): string {
  const { knobs, predictions } = exercise;
  const knobNames = knobs.map((knob) =>
    knob.kind === 'number' && knob.unit ? `${knob.name}, ${knob.unit}` : knob.name,
  );
  const rows = attempt.tried.flatMap((one, i): Cell[][] => {
    const setting = [...knobs.map(({ name }) => one.setting[name]), policyAt(exercise, one.setting)];
    const head = [exercise.title, attempt.name, i + 1, ...setting, one.runs.length, one.failure];
    if (one.failure !== null) return [head];
    return foundAt(exercise, one, attempt.revealed).map(({ watched, estimate, theory }) => {
      const numbers = [estimate?.value, estimate?.lower, estimate?.upper, theory];
      const asked = predictions.findIndex(
        (prediction) =>
          prediction.kind === 'number' &&
          prediction.of === watched.name &&
          sameSetting(exercise, prediction.setting, one.setting),
      );
      const written = attempt.predictions[asked];
      const predicted = written === undefined ? null : Number(written);
      const shown = numbers.map((number) => shownNumber(watched, number));
      return [...head, watched.name, watched.shown.unit, ...shown, predicted];
    });
  });
  const names = ['exercise', 'name', 'setting', ...knobNames, 'policy', 'runs', 'failure'];
  const measured = ['measure', 'unit', 'mean', 'lower', 'upper', 'theory', 'predicted'];
  const all = [...names, ...measured];
  return csvText(
    all,
    rows.map((row) => all.map((_, i) => row[i])),
  );
}
