import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parquetReadObjects } from 'hyparquet';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { alsoKinds } from '../../src/cli/also.ts';
import { DISTURBED, quick, Scratch } from './command.ts';

describe('alsoKinds', () => {
  it('takes kinds one by one or with commas, each once, in an order of its own', () => {
    expect(alsoKinds()).toEqual([]);
    expect(alsoKinds(['svg,latex', 'parquet', 'svg'])).toEqual(['parquet', 'latex', 'svg']);
    expect(alsoKinds(['svg, markdown'])).toEqual(['markdown', 'svg']);
  });

  it.each([
    [['latec'], '--also knows no "latec"; did you mean "latex"?'],
    [['svg,'], '--also expects one or more of parquet, latex, markdown, svg'],
    [['a picture'], '--also knows no "a picture"; known here: parquet, latex, markdown, svg'],
  ])('refuses %j', (given, words) => {
    expect(() => alsoKinds(given)).toThrow(words);
  });
});

describe('compare --also', () => {
  let at: Scratch;
  let path: string;
  beforeEach(() => {
    at = new Scratch();
    path = at.file('cell.yaml', quick() + DISTURBED);
  });
  afterEach(() => at.remove());
  const ALL = ['--also', 'parquet,latex', '--also', 'markdown,svg'];
  const files = (folder: string) =>
    readdirSync(join(at.path, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .sort();

  it('writes what is asked for, the same bytes on one worker and on two, and says so in 80 columns', async () => {
    const one = await at.mendline(['compare', path, ...ALL, '--out', 'a', '--workers', '1']);
    await at.mendline(['compare', path, ...ALL, '--out', 'b', '--workers', '2']);
    expect(one).toMatchObject({ code: 0, err: '' });
    expect(one.out.replace(/\s+/g, ' ')).toContain(
      'Beside it: comparison.json, runs.csv, twins.csv, runs.parquet, comparison.tex, comparison.md and charts/',
    );
    for (const line of one.out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
    const [a, b] = ['a', 'b'].map(files);
    const names = a!.map((name) => name.slice(join(at.path, 'a').length + 1));
    expect(names).toEqual(expect.arrayContaining(['runs.parquet', 'comparison.tex', 'comparison.md']));
    expect(names).toContain(join('charts', 'rates-2-scrap-at-once.svg'));
    for (const [i, name] of a!.entries())
      expect(readFileSync(b![i]!).equals(readFileSync(name)), name).toBe(true);
    expect(b).toHaveLength(a!.length);

    const rows = await parquetReadObjects({
      file: new Uint8Array(readFileSync(join(at.path, 'a', 'runs.parquet'))).buffer,
    });
    expect(rows.map(({ policy, seed }) => `${policy} ${seed}`)).toHaveLength(6);
    const command = 'mendline compare';
    for (const name of a!.filter((one) => !/\.csv$|\.json$/.test(one)))
      expect(readFileSync(name, 'utf8'), name).toContain(command);
    const document = JSON.parse(readFileSync(join(at.path, 'a', 'comparison.json'), 'utf8'));
    expect(document.command).toEqual(['compare', path, '--also', 'parquet,latex,markdown,svg']);
    for (const [name, sha256] of Object.entries(document.csv_sha256))
      expect(
        createHash('sha256')
          .update(readFileSync(join(at.path, 'a', name)))
          .digest('hex'),
      ).toBe(sha256);
    expect(Object.keys(document.csv_sha256)).toEqual(['runs.csv', 'twins.csv']);
  });

  it('removes those of an earlier report, whose numbers would be others, and nothing else', async () => {
    await at.mendline(['compare', path, ...ALL, '--out', 'a']);
    mkdirSync(join(at.path, 'a', 'charts', 'mine'));
    writeFileSync(join(at.path, 'a', 'charts', 'mine.svg'), '');
    await at.mendline(['compare', path, '--out', 'a', '--also', 'markdown']);
    expect(readdirSync(join(at.path, 'a')).sort()).toEqual([
      'charts',
      'comparison.html',
      'comparison.json',
      'comparison.md',
      'runs.csv',
      'twins.csv',
    ]);
    expect(readdirSync(join(at.path, 'a', 'charts')).sort()).toEqual(['mine', 'mine.svg']);
  });

  it('refuses an unknown kind before any run, and files without a folder', async () => {
    const unknown = await at.mendline(['compare', path, '--also', 'latec']);
    expect(unknown).toMatchObject({ code: 2, out: '' });
    expect(unknown.err).toContain('did you mean "latex"?');
    const nowhere = await at.mendline(['compare', path, '--also', 'svg', '--json']);
    expect(nowhere.code).toBe(2);
    expect(nowhere.err).toContain('--out FOLDER');
    expect(existsSync(join(at.path, 'reports'))).toBe(false);
  });
});
