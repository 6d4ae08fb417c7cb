import { closeSync, openSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { linesOf } from '../../../src/experiment/journal/lines.ts';
import { inFolder } from './made-up.ts';

function linesIn(text: string): string[] {
  return inFolder((folder) => {
    const path = join(folder, 'lines');
    writeFileSync(path, text);
    const fd = openSync(path, 'r');
    const found = [...linesOf(fd)].map(({ bytes, ended }) => `${bytes.toString()}${ended ? '' : '...'}`);
    closeSync(fd);
    return found;
  });
}

it('gives each line, and what stands behind the last break', () => {
  expect(linesIn('')).toEqual([]);
  expect(linesIn('a\n\nb\n')).toEqual(['a', '', 'b']);
  expect(linesIn('a\nb')).toEqual(['a', 'b...']);
});

it('puts lines together that are longer than what is read at once', () => {
  const long = 'x'.repeat(2_500_000);
  expect(linesIn(`a\n${long}\nb\n${long}`)).toEqual(['a', long, 'b', `${long}...`]);
});
