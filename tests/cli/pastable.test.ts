import { execFileSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commands.ts';
import { pastable } from '../../src/cli/pastable.ts';
import { Scratch } from './command.ts';

/** The words that a shell makes of what is pasted into it. */
const pasted = (text: string): string[] =>
  execFileSync('sh', ['-c', `mendline() { printf '%s\\n' "$@"; }\n${text}`], { encoding: 'utf8' })
    .trimEnd()
    .split('\n');

it('is one command to a shell, however long, in lines of at most 78 columns', () => {
  const words = Array.from({ length: 40 }, (_, i) => (i % 3 === 0 ? `"word ${i}"` : `--option-${i}`));
  const text = pastable(`mendline ${words.join(' ')}`);
  expect(text.split('\n').length).toBeGreaterThan(5);
  for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(78);
  expect(pasted(text)).toEqual(words.map((word) => word.replaceAll('"', '')));
});

it('breaks nothing that fits', () => {
  expect(pastable('mendline check scenarios/tray-cell.yaml')).toBe(
    '  mendline check scenarios/tray-cell.yaml',
  );
});

it.each(COMMANDS)(
  'what $name --help shows as its example can be pasted',
  async ({ name, example, options }) => {
    const at = new Scratch();
    const { out } = await at.mendline([name, '--help']);
    at.remove();
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
    const [, shown] = /^Example, .*:\n([\s\S]+)$/m.exec(out)!;
    const words = pasted(shown!);
    expect(words).toEqual(pasted(`mendline ${example[0]}`));
    const [command, , ...rest] = words;
    expect(command).toBe(name);
    for (const word of rest.filter((word) => word.startsWith('--')))
      expect(Object.keys(options)).toContain(word.slice(2));
  },
);
