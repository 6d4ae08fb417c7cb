import { existsSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DISTURBED, ended, quick, Scratch } from './command.ts';

let at: Scratch;
beforeEach(() => {
  at = new Scratch();
});
afterEach(() => at.remove());

const cell = () => at.file('cell.yaml', quick() + DISTURBED);
const read = (name: string) => readFileSync(join(at.path, 'report', name), 'utf8');

describe('cross', () => {
  it('prints who is best where and writes the same as page, JSON and CSV, the same bytes on any workers', async () => {
    const path = cell();
    const args = ['cross', path, '--severity', '0,1,3', '--out', 'report'];
    const { code, out } = await at.mendline([...args, '--workers', '1']);
    expect(code).toBe(0);
    expect(out).toContain('best in throughput, good /h (higher is better)');
    expect(out).toContain('a stop: ');
    expect(out).toContain(`Beside it: cross.json and cross.csv`);
    expect(at.files()).toEqual([
      'cell.yaml',
      'report',
      ...['cross.csv', 'cross.html', 'cross.json'].map((name) => join('report', name)),
    ]);
    const names = ['cross.csv', 'cross.html', 'cross.json'];
    const first = names.map(read);
    await at.mendline([...args, '--workers', '2']);
    expect(names.map(read)).toEqual(first);

    const printed = await at.mendline(['cross', path, '--severity', '3,1,0', '--json']);
    // The order is that of the command alone.
    expect(printed.out.replace('"3,1,0"', '"0,1,3"')).toBe(read('cross.json'));

    // Severity 0 is the undisturbed line, run by itself.
    const calm = at.file('calm.yaml', quick());
    await at.mendline(['compare', calm, '--out', 'calm']);
    const alone = JSON.parse(readFileSync(join(at.path, 'calm', 'comparison.json'), 'utf8'));
    const found = JSON.parse(read('cross.json')).runs.filter(
      (run: { severity: number }) => run.severity === 0,
    );
    expect(found).toHaveLength(alone.runs.length);
    for (const { policy, seed, measures } of found) {
      const own = alone.runs.find((run: typeof found) => run.policy === policy && run.seed === seed);
      expect(measures).toEqual(own.measures);
    }
  }, 30_000);

  it('leaves out a bound, which would be best everywhere, and says what was joined', async () => {
    const bound = at.file(
      'bound.yaml',
      'mendline: 1\ntitle: B\nabout: A bound.\npolicies: { oracle: [{ do: foresee }] }\n',
    );
    const { out } = await at.mendline(['cross', cell(), '--with', bound, '--severity', '1', '--json']);
    const document = JSON.parse(out);
    expect(document.policies).not.toContain('oracle');
    expect(document.policies.length).toBeGreaterThan(1);
    expect(document.supplements).toMatchObject([{ title: 'B' }]);
  }, 30_000);

  it('takes cases and the measure by name', async () => {
    const more = `${quick()}${DISTURBED}  slow: { disturbs: speed, station: forming, to: 50 %, at: 20 min, for: 20 min }\n`;
    const path = at.file('cell.yaml', more);
    const args = ['cross', path, '--severity', '1', '--case', 'slow', '--case', 'all together', '--by'];
    const { out } = await at.mendline([...args, 'lead time', '--json']);
    const document = JSON.parse(out);
    expect(document.cases.map((one: { case: string }) => one.case)).toEqual(['slow', 'all together']);
    expect(document.by.key).toBe('lead_time_s');
  }, 30_000);

  it('keeps the runs that finished when it is interrupted', async () => {
    const child = at.start(['cross', cell(), '--severity', '0,1', '--seeds', '5000', '--out', 'report']);
    const end = ended(child);
    while (!existsSync(join(at.path, 'report'))) await setTimeout(20);
    await setTimeout(4000);
    child.kill('SIGINT');
    const { code, err } = await end;
    expect(code).toBe(130);
    const [, finished] = /interrupted: (\d+) of 20000 runs had finished; they are kept in /.exec(err)!;
    expect(Number(finished)).toBeGreaterThan(0);
    expect(read('unfinished-cross.csv').trim().split('\r\n')).toHaveLength(Number(finished) + 1);
    expect(err).toContain('the same command with --resume goes on from there');
  }, 30_000);

  it('goes on from its journal to the same bytes, and from no other', async () => {
    const args = ['cross', cell(), '--severity', '0,1', '--out', 'report'];
    await at.mendline([...args, '--seeds', '100']);
    const whole = ['cross.html', 'cross.json', 'cross.csv'].map(read);
    rmSync(join(at.path, 'report'), { recursive: true });
    const child = at.start([...args, '--seeds', '100']);
    const end = ended(child);
    const journal = join(at.path, 'report', 'runs.journal');
    while (!existsSync(journal) || statSync(journal).size < 10_000) await setTimeout(10);
    child.kill('SIGKILL');
    await end;
    const other = await at.mendline(['cross', cell(), '--out', 'report', '--seeds', '100', '--resume']);
    expect(other).toMatchObject({ code: 2, out: '' });
    expect(other.err).toContain('it is of 400 runs (2 policies under 100 seeds), and 800 runs');
    const { code, err } = await at.mendline([...args, '--seeds', '100', '--resume']);
    expect(code).toBe(0);
    expect(err).toMatch(/going on from .*runs\.journal: \d+ of 400 runs are there\./);
    expect(['cross.html', 'cross.json', 'cross.csv'].map(read)).toEqual(whole);
    expect(existsSync(journal)).toBe(false);
  }, 120_000);
});

describe('cross refuses, with the remedy,', () => {
  const one = () => at.file('one.yaml', quick().replace(/ {2}scrap at once:\n.*\n/, '') + DISTURBED);
  it.each<[string, () => string[], string]>([
    [
      'a severity below zero',
      () => [cell(), '--severity=-1,2'],
      '"-1" is no severity; it expects numbers from 0',
    ],
    ['an unknown case', () => [cell(), '--case', 'a stopp'], '--case "a stopp" is not in the scenario; did you mean "a stop"?'], // biome-ignore format: one line reads better
    ['a case given twice', () => [cell(), '--case', 'a stop', '--case', 'a stop'], 'is given twice'],
    ['an unknown measure', () => [cell(), '--by', 'thruput'], '--by "thruput" is no measure; did you mean "throughput"?'], // biome-ignore format: one line reads better
    [
      'a line that nothing disturbs',
      () => [at.file('calm.yaml', quick())],
      'write some under "disturbances:"',
    ],
    [
      'a single policy',
      () => [one()],
      '"carry on" is the only policy, so none can be the best; name another by --only',
    ],
    ['two lists of severities', () => [cell(), '--severity', '1', '--severity', '2'], '--severity is given more than once'], // biome-ignore format: one line reads better
  ])('%s', async (_, args, told) => {
    const { code, out, err } = await at.mendline(['cross', ...args()]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(told);
    expect(existsSync(join(at.path, 'reports'))).toBe(false);
  });
});
