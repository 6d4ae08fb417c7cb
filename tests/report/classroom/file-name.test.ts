import { expect, it } from 'vitest';
import { exerciseName, savedName } from '../../../src/report/classroom/file-name.ts';

it.each([
  ['scenarios/exercises/buffer.yaml', '', 'answers-buffer.json'],
  ['C:\\class\\My line.yml', 'A. Pupil', 'answers-my-line-a-pupil.json'],
  ['drift', 'Zoë Müller', 'answers-drift-zoë-müller.json'],
  ['drift.yaml', '../../<x>|?*', 'answers-drift-x.json'],
  ['drift.yaml', 'a'.repeat(60), `answers-drift-${'a'.repeat(40)}.json`],
])('names a file after %s and "%s"', (file, pupil, name) => {
  expect(savedName('answers', { exercise: exerciseName(file), pupil, suffix: 'json' })).toBe(name);
});
