import { dirname, join } from 'node:path';
import type { Exercise } from '../exercise/exercise.ts';
import { parseExercise } from '../exercise/parse.ts';
import { OF_SCENARIOS, readText, reasons, type TextFile } from '../experiment/scenario-file.ts';

const OF_EXERCISES = reasons('exercise', 'scenarios/exercises/buffer.yaml');

interface ExerciseFile extends TextFile {
  readonly exercise: Exercise;
  /** The scenario that it names; null where it holds its own. */
  readonly scenario: TextFile | null;
}

/**
 * Reads and checks an exercise, and the scenario that it names by its path from there.
 * @throws UnreadableFileError, ScenarioError
 */
export function readExercise(path: string): ExerciseFile {
  const file = readText(path, OF_EXERCISES);
  let named: TextFile | null = null;
  const exercise = parseExercise({ source: path, text: file.text }, (beside) => {
    named = readText(join(dirname(path), beside), OF_SCENARIOS);
    return { source: named.path, text: named.text };
  });
  return { ...file, exercise, scenario: named };
}
