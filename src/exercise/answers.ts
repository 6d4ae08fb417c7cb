import type { Estimate } from '../statistics/estimate.ts';
import type { Attempt } from './attempt.ts';
import type { Exercise } from './exercise.ts';
import { expectedAt, policyAt, scenarioAt } from './setting.ts';
import { estimateOf, watchedOf } from './trial.ts';

const ends = (estimate: Estimate | null) =>
  estimate && {
    mean: estimate.value,
    lower: estimate.lower,
    upper: estimate.upper,
    level: estimate.level,
    runs: estimate.runs,
    method: estimate.method,
  };

/** What the runs of a page were made from; other runs are not to be laid beside them. */
export interface MadeFrom {
  readonly version: string;
  /** Of the exercise's text. */
  readonly sha256: string;
  /** Of the text of the scenario that it names; null where it holds its own. */
  readonly scenario: string | null;
}

/** What is handed in: numbers unrounded, in the units of the engine (seconds, shares from 0 to 1, pieces, good per hour). */
export function answersOf(exercise: Exercise, attempt: Attempt, { version, sha256, scenario }: MadeFrom) {
  const { name, predictions, tried, revealed, notes } = attempt;
  return {
    exercise: exercise.title,
    exercise_sha256: sha256,
    scenario_sha256: scenario,
    mendline: version,
    name,
    predictions: exercise.predictions.map(({ asks }, i) => ({ asks, predicted: predictions[i] ?? null })),
    settings: tried.map(({ setting, runs, failure }) => ({
      knobs: setting,
      policy: policyAt(exercise, setting),
      failure,
      seeds: runs.length,
      measures:
        failure !== null
          ? []
          : watchedOf(scenarioAt(exercise, setting), exercise.watch).map((watched, i) => ({
              name: watched.name,
              ...ends(estimateOf(runs, i, watched)),
              theory: revealed ? (expectedAt(exercise, setting)?.[watched.name] ?? null) : null,
            })),
    })),
    revealed,
    notes,
  };
}
