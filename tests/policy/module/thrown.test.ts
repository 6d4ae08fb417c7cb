import { expect, it } from 'vitest';
import { lineIn, thrownInWords } from '../../../src/policy/module/thrown.ts';

it('finds the line of the file in a trace of calls', () => {
  expect(lineIn('Error: no\n    at start (my/code.ts:14:7)\n    at engine.js:3:1', 'my/code.ts')).toBe(
    ', at line 14',
  );
  expect(lineIn('Error: no\n    at engine.js:3:1', 'my/code.ts')).toBe('');
  expect(lineIn(undefined, 'my/code.ts')).toBe('');
});

it.each([
  [new TypeError('not so'), ': TypeError: not so'],
  [new Error('not so'), ': not so'],
  ['a text', ': a text'],
  [undefined, ': undefined'],
  [Object.create(null), ' something that has no words'],
])('says in words what was thrown: %s', (thrown, words) => {
  expect(thrownInWords(thrown, 'code.ts')).toBe(words);
});
