import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { EXIT } from '../../src/cli/exit-codes.ts';
import { Scratch, shipped } from './command.ts';

const scratch = new Scratch();
afterAll(() => scratch.remove());
const buffer = shipped('exercises/buffer.yaml');

it('writes one page that fetches nothing, the same again', async () => {
  const pages = await Promise.all(
    ['one.html', 'two.html'].map(async (name) => {
      const { code, out, err } = await scratch.mendline(['classroom', buffer, '--out', name]);
      expect([code, err]).toEqual([EXIT.done, '']);
      expect(out).toContain(`Class page: ${name}\n`);
      return readFileSync(join(scratch.path, name), 'utf8');
    }),
  );
  expect(pages[1]).toBe(pages[0]);
  expect(pages[0]).toContain("default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-");
  expect(pages[0]!.replace(/<script[\s\S]*?<\/script>/g, '')).not.toMatch(/\ssrc=|<link|\son[a-z]+=/i);
});

it.each([
  ['a page that is none', [buffer, '--out', 'folder'], EXIT.usage, 'expected the name of a page'],
  [
    'a place where no page can be',
    [buffer, '--out', `${buffer}/page.html`],
    EXIT.unwritable,
    'choose another file with --out FILE',
  ],
  ['no exercise at all', [], EXIT.usage, 'name an exercise'],
  ['a file that is not there', ['nowhere.yaml'], EXIT.scenario, 'name an exercise'],
  ['a scenario', [shipped('calm-line.yaml')], EXIT.scenario, 'this is a scenario; an exercise names one'],
] as const)('refuses %s', async (_, words, status, said) => {
  const { code, err } = await scratch.mendline(['classroom', ...words]);
  expect([code, err]).toEqual([status, expect.stringContaining(said)]);
});
