import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { EXIT } from '../../src/cli/exit-codes.ts';
import { DISTURBED, quick, Scratch } from './command.ts';

const scratch = new Scratch();
afterAll(() => scratch.remove());
scratch.file('cell.yaml', quick() + DISTURBED);

it('writes one page that fetches nothing, the same again, by a name of its own for each policy and seed', async () => {
  const pages: string[] = [];
  for (const words of [[], ['--out', 'again.html']]) {
    const { code, out, err } = await scratch.mendline(['watch', 'cell.yaml', '--seed', '2', ...words]);
    expect([code, err]).toEqual([EXIT.done, '']);
    const [, path] = /^Playback: (.*)$/m.exec(out)!;
    pages.push(readFileSync(join(scratch.path, path!), 'utf8'));
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  }
  expect(pages[1]).toBe(pages[0]);
  expect(pages[0]).toContain("default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-");
  expect(pages[0]!.replace(/<script[\s\S]*?<\/script>/g, '')).not.toMatch(/\ssrc=|<link|\son[a-z]+=/i);
  const first = ['watch', 'cell.yaml', '--hours', '1'];
  expect((await scratch.mendline(first)).code).toBe(EXIT.done);
  const named = ['watch', 'cell.yaml', '--policy', 'scrap at once'];
  expect((await scratch.mendline(named)).code).toBe(EXIT.done);
  expect(scratch.files()).toEqual(
    expect.arrayContaining([
      join('reports', 'watch', 'cell-seed-2.html'),
      join('reports', 'watch', 'cell-seed-1-first-1-h.html'),
      join('reports', 'watch', 'cell-scrap-at-once-seed-1.html'),
    ]),
  );
});

it.each([
  ['a page that is none', ['cell.yaml', '--out', 'folder'], EXIT.usage, 'expected the name of a page'],
  [
    'an unknown policy',
    ['cell.yaml', '--policy', 'scrap at onze'],
    EXIT.usage,
    'did you mean "scrap at once"?',
  ],
  [
    'a seed that is none',
    ['cell.yaml', '--seed', '0'],
    EXIT.usage,
    '--seed expects a whole number from 1 to',
  ],
  ['no hours', ['cell.yaml', '--hours', '0'], EXIT.usage, '--hours expects a whole number from 1 to'],
  [
    'a place where no page can be',
    ['cell.yaml', '--out', 'cell.yaml/page.html'],
    EXIT.unwritable,
    'a file stands where a folder should be; choose another file with --out FILE',
  ],
  ['no scenario at all', [], EXIT.usage, 'name a scenario'],
  ['a file that is not there', ['nowhere.yaml'], EXIT.scenario, 'nowhere.yaml'],
] as const)('refuses %s', async (_, words, status, said) => {
  const { code, err } = await scratch.mendline(['watch', ...words]);
  expect([code, err]).toEqual([status, expect.stringContaining(said)]);
});
