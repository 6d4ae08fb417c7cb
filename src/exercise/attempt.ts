import type { Exercise, Setting } from './exercise.ts';
import { refusalOf } from './setting.ts';
import type { Values } from './trial.ts';

/** The runs at one setting. */
export interface Tried {
  readonly setting: Setting;
  readonly runs: readonly Values[];
  /** Why it came to nothing; null where it did not. */
  readonly failure: string | null;
}

/** All that somebody did with an exercise. */
export interface Attempt {
  readonly name: string;
  /** As written, by prediction; empty until all are written down. */
  readonly predictions: readonly string[];
  readonly tried: readonly Tried[];
  readonly revealed: boolean;
  readonly notes: string;
}

export const NEW_ATTEMPT: Attempt = { name: '', predictions: [], tried: [], revealed: false, notes: '' };

const isText = (value: unknown): value is string => typeof value === 'string';

function isTried(value: unknown, { knobs, watch }: Exercise): value is Tried {
  const { setting, runs, failure } = (value ?? {}) as Partial<Tried>;
  const values = (run: unknown) =>
    Array.isArray(run) &&
    run.length === watch.length &&
    run.every((one) => one === null || Number.isFinite(one));
  return (
    typeof setting === 'object' &&
    setting !== null &&
    knobs.every((knob) => refusalOf(knob, setting[knob.name]) === null) &&
    Array.isArray(runs) &&
    runs.every(values) &&
    (failure === null || isText(failure))
  );
}

/** What was kept of an attempt, if it can be one of this exercise; without settings that cannot. */
export function attemptFrom(kept: string | null, exercise: Exercise): Attempt | null {
  let data: Partial<Attempt>;
  try {
    data = JSON.parse(kept ?? 'null') ?? {};
  } catch {
    return null;
  }
  const { name, predictions, tried, revealed, notes } = data;
  const sound =
    [name, notes].every(isText) &&
    Array.isArray(predictions) &&
    predictions.every(isText) &&
    [0, exercise.predictions.length].includes(predictions.length) &&
    Array.isArray(tried) &&
    typeof revealed === 'boolean';
  if (!sound) return null;
  return { ...(data as Attempt), tried: tried.filter((one) => isTried(one, exercise)) };
}
