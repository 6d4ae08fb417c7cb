import { dirname, join } from 'node:path';
import type { Exercise } from '../exercise/exercise.ts';
import { parseExercise } from '../exercise/parse.ts';
import { OF_SCENARIOS, readText, reasons, type TextFile } from '../experiment/scenario-file.ts';

const OF_EXERCISES = reasons('exercise', 'scenarios/exercises/buffer.yaml');

/**
 * Reads and checks an exercise, and the scenario that it names by its path from there.
 * @throws UnreadableFileError, ScenarioError
 */
export function readExercise(path: string): TextFile & { readonly exercise: Exercise } {
  const file = readText(path, OF_EXERCISES);
  const exercise = parseExercise({ source: path, text: file.text }, (beside) => {
    const scenario = readText(join(dirname(path), beside), OF_SCENARIOS);
    return { source: scenario.path, text: scenario.text };
  });
  return { ...file, exercise };
}
