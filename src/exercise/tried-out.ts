import { failureOf } from '../experiment/run-failure.ts';
import { cornersOf } from './check.ts';
import type { Exercise, Setting } from './exercise.ts';
import { startOf } from './setting.ts';
import { trial } from './trial.ts';

/** A line that stands still mostly does so under any seed. */
const SEEDS = 3;

/** Why the first few runs at a setting come to nothing; null where they do not. */
function failureAt(exercise: Exercise, setting: Setting): string | null {
  try {
    for (const _ of trial({ ...exercise, seeds: Math.min(SEEDS, exercise.seeds) }, setting));
    return null;
  } catch (error) {
    const why = failureOf(error);
    if (why === null) throw error;
    return why;
  }
}

/** Why the line cannot run where all knobs start; null where it can. */
export const failureAtStart = (exercise: Exercise): string | null => failureAt(exercise, startOf(exercise));

/** The ends of knobs at which the line cannot run, and why. */
export function failingEnds(exercise: Exercise): { readonly setting: Setting; readonly why: string }[] {
  return [...cornersOf(exercise)].flatMap(({ setting }) => {
    const why = failureAt(exercise, setting);
    return why === null ? [] : [{ setting, why }];
  });
}
