import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { EXIT } from '../../src/cli/exit-codes.ts';
import { DISTURBED, ended, quick, Scratch } from './command.ts';

const SUPPLEMENT = `mendline: 1
title: Scrap what is off
about: Made up.
policies:
  scrap it: [{ do: inspect, at: gauging, every: 1, off-limits: scrap }]
`;
const MODULE = "export default { name: 'in code', start() {} };\n";
const hash = (text: string) => createHash('sha256').update(text).digest('hex');

let at: Scratch;
beforeEach(() => {
  at = new Scratch();
  at.file('cell.yaml', quick() + DISTURBED);
  at.file('scrap.yaml', SUPPLEMENT);
  at.file('code.js', MODULE);
});
afterEach(() => at.remove());

const WITH = ['--with', 'scrap.yaml', '--policy-module', 'code.js', '--only', 'scrap it', '--seeds', '2'];
const made = (options: readonly string[] = []) =>
  at.mendline(['compare', 'cell.yaml', '--out', 'a', ...options]);
const rerun = (...args: string[]) => at.mendline(['rerun', ...args]);
const change = (name: string, from: string | RegExp, to: string) => {
  const path = join(at.path, name);
  writeFileSync(path, readFileSync(path, 'utf8').replace(from, to));
};

describe('rerun', () => {
  it('finds the same bytes in every file of a report with all that may go into one, on any number of workers', async () => {
    const worth = ['--worth', '2 /h', '--worth', 'scrap rate=0.5 %', '--pairs'];
    await made([...WITH, ...worth, '--also', 'parquet,latex,markdown,svg', '--workers', '2']);
    at.file(join('a', 'notes.txt'), 'mine');
    const { code, out, err } = await rerun('a', '--workers', '1');
    expect({ code, err }).toEqual({ code: EXIT.done, err: '' });
    for (const name of ['comparison.html', 'comparison.json', 'runs.csv', 'twins.csv', 'runs.parquet'])
      expect(out).toContain(`${name}: same bytes\n`);
    expect(out).toContain('charts/intervals-throughput_per_h.svg: same bytes\n');
    expect(out).toContain('notes.txt: the command does not write it; not compared\n');
    expect(out).toMatch(/\nAll \d+ files have the same bytes\.\n$/);
    expect(out.replace(/\s+/g, ' ')).toContain(
      'mendline compare cell.yaml --with scrap.yaml --only "scrap it" --seeds 2 --worth "2 /h" --worth "scrap rate=0.5 %" --policy-module code.js --also',
    );
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
    expect(existsSync(join(at.path, 'reports'))).toBe(false);
  });

  it('takes a document by itself, wherever it lies and whatever it is called', async () => {
    const { out } = await at.mendline(['compare', 'cell.yaml', '--json', '--no-twins']);
    at.file('kept.json', out);
    const again = await rerun('kept.json');
    expect(again).toMatchObject({ code: EXIT.done, err: '' });
    expect(again.out).toContain('kept.json: same bytes\n');
    expect(again.out).toContain('The file has the same bytes.');
  });

  it('tells of each file where it first differs, exits with a code of its own, and keeps what it made if told to', async () => {
    await made();
    change(join('a', 'runs.csv'), 'scrap at once,2,', 'scrap at once,20,');
    rmSync(join(at.path, 'a', 'twins.csv'));
    const { code, out } = await rerun('a', '--out', 'b');
    expect(code).toBe(EXIT.differs);
    expect(out).toMatch(
      /runs\.csv: differs from line 5 on:\n {2}report: scrap at once,20,.*\n {2}anew: {3}scrap at once,2,/,
    );
    expect(out).toContain('twins.csv: is not in the report\n');
    expect(out).toContain('comparison.json: same bytes\n');
    expect(out).toContain('2 of 4 files not the same; made anew they are in b.');
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
    expect(existsSync(join(at.path, 'b', 'twins.csv'))).toBe(true);
  });

  it('refuses where what the report was made from has changed or is gone, and tells both hashes', async () => {
    await made(WITH);
    for (const [name, from, to] of [
      ['cell.yaml', 'title: ', 'title:  '],
      ['scrap.yaml', 'Made up.', 'Made up!'],
      ['code.js', 'start() {}', 'start() { }'],
    ] as const) {
      const then = readFileSync(join(at.path, name), 'utf8');
      change(name, from, to);
      const now = readFileSync(join(at.path, name), 'utf8');
      const { code, out, err } = await rerun('a');
      expect({ code, out }).toEqual({ code: EXIT.differs, out: '' });
      expect(err).toContain(`${name} has changed since the report was made`);
      expect(err).toContain(`\n  then ${hash(then)}\n  now  ${hash(now)}\n`);
      for (const line of err.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
      at.file(name, then);
    }
    rmSync(join(at.path, 'cell.yaml'));
    const { code, err } = await rerun('a');
    expect(code).toBe(EXIT.differs);
    expect(err).toContain(
      'cell.yaml: there is no such file; rerun in the folder that the report was made from',
    );
  });

  it('says that another version made the report, and goes on', async () => {
    await made();
    change(join('a', 'comparison.json'), /"version": "[^"]+"/, '"version": "0.0.1"');
    const { code, out } = await rerun('a');
    expect(code).toBe(EXIT.differs);
    expect(out).toMatch(/^The report was made by mendline 0\.0\.1; this is /);
    expect(out).toContain('comparison.json: differs from line 3 on:\n  report:   "version": "0.0.1",\n');
    expect(out).toContain('runs.csv: same bytes\n');
  });

  it('refuses what is no report, and to write over the report', async () => {
    await made();
    mkdirSync(join(at.path, 'empty'));
    at.file(join('a', 'notes.txt'), 'mine');
    at.file(join('empty', 'cell.yaml'), quick());
    const checked = await at.mendline(['explain', 'cell.yaml', '--json', '--seeds', '2']);
    at.file('explain.json', checked.out);
    for (const [args, words] of [
      [['nothing'], 'nothing: there is no such report'],
      [['empty'], 'empty: in this folder there is none of comparison.json'],
      [
        [join('empty', 'cell.yaml')],
        'cannot be rerun: it does not say what it was made from, and beside it there is none of comparison.json,',
      ],
      [['explain.json'], 'explain.json cannot be rerun: its "format" is not that of a report'],
      [['a', '--out', 'a'], '--out a holds the report, which would be written over'],
      [[], 'name a report, such as reports/tray-cell'],
    ] as const) {
      const { code, out, err } = await rerun(...args);
      expect({ code, out }).toEqual({ code: EXIT.usage, out: '' });
      expect(err).toContain(words);
    }
    const besides = await rerun(join('a', 'notes.txt'));
    expect(besides.code).toBe(EXIT.usage);
    expect(besides.err).toContain('notes.txt cannot be compared: the command writes no notes.txt');
  });

  it('makes a crossed experiment again, too, and beside a comparison in the same folder both', async () => {
    await at.mendline(['cross', 'cell.yaml', '--severity', '0,1', '--by', 'lead time', '--out', 'a']);
    const alone = await rerun('a');
    expect(alone).toMatchObject({ code: EXIT.done, err: '' });
    for (const name of ['cross.csv', 'cross.html', 'cross.json'])
      expect(alone.out).toContain(`${name}: same bytes\n`);
    expect(await rerun(join('a', 'cross.json'))).toMatchObject({ code: EXIT.done, err: '' });

    await made(['--no-twins']);
    const both = await rerun('a');
    expect(both.out).toContain('mendline compare cell.yaml --no-twins\nmendline cross cell.yaml');
    expect(both.out).toContain('All 6 files have the same bytes.');
    expect(both.out).not.toContain('not compared');
  }, 300_000);

  it('ends with what it does again, and says that nothing was compared', async () => {
    await made(['--seeds', '500', '--no-twins', '--only', 'carry on']);
    const child = at.start(['rerun', 'a', '--out', 'b']);
    const end = ended(child);
    await new Promise((resolve) => child.stdout!.once('data', resolve));
    child.kill('SIGINT');
    const { code, err } = await end;
    expect(code).toBe(EXIT.interrupted);
    expect(err).toContain('the report was not made again, so nothing was compared');
  });

  it('does no other command than one that compares, and writes nowhere else than it says', async () => {
    await made();
    change(join('a', 'comparison.json'), '"compare",', '"check",');
    expect(await rerun('a')).toMatchObject({ code: EXIT.usage, out: '' });
    change(join('a', 'comparison.json'), '"check",', '"compare", "--out", "elsewhere",');
    const { code, err } = await rerun('a');
    expect(code).toBe(EXIT.usage);
    expect(err).toContain('--out is given more than once');
    expect(existsSync(join(at.path, 'elsewhere'))).toBe(false);
  });
});
