import { expect, it } from 'vitest';
import { runOf } from '../../src/experiment/run-words.ts';

it.each([
  [undefined, 'the run of policy "a"'],
  [{ disturbed: false }, 'the undisturbed run of policy "a"'],
  [{ disturbed: true, case: 'b', severity: 2 }, 'the run of policy "a" in case "b" at severity 2'],
  [
    {
      disturbed: true,
      changes: [
        { at: 'a/b', is: 8 },
        { at: 'c', is: '2 s' },
      ],
    },
    'the run of policy "a" with a/b = 8, c = 2 s',
  ],
])('a run of %o is %s', (variant, told) => {
  expect(runOf({ policy: 'a', seed: 1, ...(variant && { variant }) })).toBe(told);
});
