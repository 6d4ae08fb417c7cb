import { expect, it } from 'vitest';
import { typedWords } from '../../../src/cli/completion/typed-words.ts';

// Quoting as in the Shell Command Language of POSIX, sections 2.2.1 to 2.2.3, from memory.
it.each<[string, string[], number]>([
  ['', [''], 0],
  ['run ', ['run', ''], 0],
  ['run  a.yaml', ['run', 'a.yaml'], 0],
  ['a\\ b c', ['a b', 'c'], 0],
  ['"a b" c', ['a b', 'c'], 0],
  ["'a \\b", ['a \\b'], 0],
  ['"a \\" \\b', ['a " \\b'], 0],
  ['"" x', ['', 'x'], 0],
  ['--policy=sto', ['--policy=sto'], 9],
  ['--policy="sto', ['--policy=sto'], 9],
  ['"--policy=sto', ['--policy=sto'], 0],
  ['a\\:b', ['a:b'], 0],
  ['a:b c', ['a:b', 'c'], 0],
])('reads %j as a shell does', (line, words, kept) => {
  expect(typedWords(line)).toEqual({ words, kept });
});
