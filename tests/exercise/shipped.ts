import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Exercise } from '../../src/exercise/exercise.ts';
import { parseExercise } from '../../src/exercise/parse.ts';

const FOLDER = 'scenarios/exercises';

/** Every exercise that ships, by the name of its file. */
export const SHIPPED: readonly (readonly [string, Exercise])[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .sort()
  .map((name) => {
    const read = (path: string) => ({ source: path, text: readFileSync(join(FOLDER, path), 'utf8') });
    return [name, parseExercise(read(name), read)];
  });
