import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DISTURBED, ended, quick, Scratch, shipped } from './command.ts';

let at: Scratch;
beforeEach(() => {
  at = new Scratch();
});
afterEach(() => at.remove());

const ESCAPE = '\u001b';
const report = (folder: string) =>
  Object.fromEntries(
    readdirSync(join(at.path, folder)).map((name) => [
      name,
      readFileSync(join(at.path, folder, name), 'utf8'),
    ]),
  );

describe('help', () => {
  it.each([[[]], [['compare']], [['run']], [['check']], [['explain']], [['trace']], [['rerun']]])(
    'of %j exits 0 and says what each option does',
    async (command) => {
      const { code, out, err } = await at.mendline([...command, '--help']);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      const options = out.split('\n').filter((line) => /^ +(-h, )?--[a-z]+ {2}/.test(line));
      expect(options.length).toBeGreaterThanOrEqual(2);
      for (const line of options) expect(line).toMatch(/--[a-z]+ {2,}\S+ \S+/);
      for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    },
  );

  it.each([
    ['compare', 'mendline compare scenarios/tray-cell.yaml --seeds 10'],
    ['run', 'mendline run scenarios/tray-cell.yaml --policy "retune forming"'],
    ['check', 'mendline check scenarios/tray-cell.yaml'],
    ['explain', 'mendline explain scenarios/tray-cell.yaml'],
    ['trace', 'mendline trace scenarios/tray-cell.yaml --seed 1 --part 812'],
    ['rerun', 'mendline rerun reports/tray-cell'],
  ])('of %s shows a command in one line, to be copied', async (command, example) => {
    const { out } = await at.mendline([command, '--help']);
    expect(out.split('\n')).toContain(`  ${example}`);
  });

  it('names the version of the package', async () => {
    const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
    expect(await at.mendline(['--version'])).toEqual({ code: 0, out: `${version}\n`, err: '' });
  });
});

describe('check', () => {
  const scenarios = readdirSync(shipped('')).filter((name) => name.endsWith('.yaml'));

  it.each(scenarios)('takes the shipped %s', async (name) => {
    const { code, out, err } = await at.mendline(['check', shipped(name)]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
  });

  it('prints JSON alone when asked to', async () => {
    const { out } = await at.mendline(['check', at.file('cell.yaml', quick()), '--json']);
    const document = JSON.parse(out);
    expect(Object.keys(document)).toEqual([
      'format', 'scenario', 'ideal_rate_per_h', 'bottleneck', 'stations', 'crew', 'carriers', 'calendars',
      'demand', 'stocks', 'disturbances', 'cases', 'policies',
    ]); // biome-ignore format: one line reads better
    expect(document.policies).toEqual([
      { name: 'carry on', responses: [], charts: [] },
      { name: 'scrap at once', responses: ['inspect'], charts: [] },
    ]);
  });
});

describe('explain', () => {
  const scenarios = readdirSync(shipped('')).filter(
    (name) => name.endsWith('.yaml') && name !== 'knotted.yaml',
  );

  it.each(scenarios)('takes the shipped %s', async (name) => {
    const { code, out, err } = await at.mendline(['explain', shipped(name), '--seeds', '2']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
  });

  it('prints JSON alone when asked to, of 10 runs unless told otherwise, and writes no file', async () => {
    const path = at.file('cell.yaml', quick());
    const { code, out, err } = await at.mendline(['explain', path, '--json']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(JSON.parse(out)).toMatchObject({ format: 'mendline explain 1', features: [{ feature: 'rim' }] });
    expect(JSON.parse(out).seeds).toHaveLength(10);
    const fewer = await at.mendline(['explain', path, '--json', '--seeds', '3']);
    expect(JSON.parse(fewer.out).seeds).toEqual([1, 2, 3]);
    expect(at.files()).toEqual(['cell.yaml']);
  });
});

describe('compare', () => {
  it('gives the same bytes on one worker, on two, and again', async () => {
    const path = at.file('cell.yaml', quick());
    const once = await at.mendline(['compare', path, '--out', 'a', '--workers', '1']);
    const two = await at.mendline(['compare', path, '--out', 'b', '--workers', '2']);
    const again = await at.mendline(['compare', path, '--out', 'a', '--workers', '2']);
    expect(once).toMatchObject({ code: 0, err: '' });
    expect(again).toEqual(once);
    expect(two.out.replace(join('b', 'comparison'), join('a', 'comparison'))).toBe(once.out);
    expect(Object.keys(report('a')).sort()).toEqual(['comparison.html', 'comparison.json', 'runs.csv']);
    expect(report('b')).toEqual(report('a'));
  });

  it('writes into reports/ when no folder is given, and into a pipe no escape code and no long line', async () => {
    const { out, err } = await at.mendline(['compare', at.file('cell.yaml', quick())]);
    expect(Object.keys(report(join('reports', 'cell'))).sort()).toEqual([
      'comparison.html',
      'comparison.json',
      'runs.csv',
    ]);
    expect(out + err).not.toContain(ESCAPE);
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
  });

  it('prints JSON alone when asked to, and writes no file', async () => {
    const path = at.file('cell.yaml', quick());
    const { code, out, err } = await at.mendline(['compare', path, '--json']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const document = JSON.parse(out);
    expect(Object.keys(document)).toEqual([
      'format', 'version', 'command', 'scenario', 'seeds', 'level', 'comparisons', 'pair_comparisons', 'baseline',
      'policies', 'measures', 'state_shares', 'crew_busy_shares', 'stocks', 'spread',
      'scrap_causes', 'misfit_pairs', 'sizes', 'levels', 'runs', 'csv_sha256', 'warm_up',
    ]); // biome-ignore format: one line reads better
    expect(document).toMatchObject({ seeds: [1, 2, 3], baseline: 'carry on', level: 0.95 });
    expect(document.runs).toHaveLength(6);
    expect(at.files()).toEqual(['cell.yaml']);
  });

  it('writes the JSON that it prints, and one row a run', async () => {
    const path = at.file('cell.yaml', quick());
    const { out } = await at.mendline(['compare', path, '--seeds', '5', '--json', '--out', 'a']);
    expect(out).toBe(report('a')['comparison.json']);
    const [heading, ...rows] = report('a')['runs.csv']!.trim().split('\r\n');
    expect(heading).toMatch(/^policy,seed,/);
    expect(rows.map((row) => row.split(',').slice(0, 2).join(' '))).toEqual(
      [1, 2, 3, 4, 5].flatMap((seed) => [`carry on ${seed}`, `scrap at once ${seed}`]),
    );
  });

  it('runs the undisturbed twins of a disturbed line, unless told not to, which changes no run', async () => {
    const path = at.file('cell.yaml', quick() + DISTURBED);
    const { code, out, err } = await at.mendline(['compare', path, '--out', 'a', '--workers', '2']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('what the disturbances cost, against the same seeds without them');
    expect(out).toContain('Beside it: comparison.json, runs.csv and twins.csv');
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
    const made = report('a');
    const { twins, ...document } = JSON.parse(made['comparison.json']!);
    expect(twins.measures[0].rows).toMatchObject([
      { policy: 'carry on', runs: 3 },
      { policy: 'scrap at once', runs: 3 },
    ]);
    const [heading, ...rows] = made['twins.csv']!.trim().split('\r\n');
    expect(heading).toMatch(/^policy,seed,undisturbed_throughput_per_h,output_lost_parts,depth_per_h,/);
    expect(rows.map((row) => row.split(',').slice(0, 2).join(' '))).toEqual(
      [1, 2, 3].flatMap((seed) => [`carry on ${seed}`, `scrap at once ${seed}`]),
    );
    expect(made['comparison.html']).toContain('id="twins"');

    const one = await at.mendline(['compare', path, '--out', 'b', '--workers', '1']);
    expect(one.out.replace(join('b', 'comparison'), join('a', 'comparison'))).toBe(out);
    expect(report('b')).toEqual(made);

    await at.mendline(['compare', path, '--out', 'a', '--no-twins']);
    const without = report('a');
    expect(Object.keys(without).sort()).toEqual(['comparison.html', 'comparison.json', 'runs.csv']);
    const { command, csv_sha256 } = document;
    expect(JSON.parse(without['comparison.json']!)).toEqual({
      ...document,
      command: [...command, '--no-twins'],
      csv_sha256: { 'runs.csv': csv_sha256['runs.csv'] },
    });
    expect(without['runs.csv']).toBe(made['runs.csv']);
    expect(without['comparison.html']).not.toContain('id="twins"');
    expect(without['comparison.html']).toContain('cell.yaml --no-twins');
  });

  it('takes hostile names for what they are: text', async () => {
    const path = at.file(
      'cell.yaml',
      quick({ title: '<script>alert(1)</script>', policy: '=1+cmd|" /C calc"!A0' }),
    );
    const { code, err } = await at.mendline(['compare', path, '--out', 'a']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(report('a')['comparison.html']).not.toContain('<script>alert');
    expect(report('a')['comparison.html']).toContain('&lt;script&gt;alert');
    for (const row of report('a')['runs.csv']!.split('\r\n')) expect(row).not.toMatch(/^"?=/);
    expect(JSON.parse(report('a')['comparison.json']!).baseline).toBe('=1+cmd|" /C calc"!A0');
  });
});

describe('run', () => {
  it('runs the first policy, or the one that is named, and writes no file', async () => {
    const path = at.file('cell.yaml', quick());
    const first = await at.mendline(['run', path]);
    expect(first.out).toContain('policy carry on');
    const named = await at.mendline(['run', path, '--policy', 'scrap at once', '--json']);
    expect(JSON.parse(named.out)).toMatchObject({
      command: ['run', path, '--policy', 'scrap at once', '--json'],
      policies: ['scrap at once'],
      seeds: [1, 2, 3],
    });
    expect(at.files()).toEqual(['cell.yaml']);
  });

  it('shows shifts, technicians, handlers and crews of the shipped cell in 80 columns', async () => {
    const { code, out, err } = await at.mendline(['run', shipped('shared-crew.yaml'), '--seeds', '2']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(
      /^station +working +starved +blocked +down +technician +handler +set-up +shift +held$/m,
    );
    expect(out).toMatch(/^fitter +\d+\.\d$/m);
    expect(out).not.toContain('_');
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
  });

  it('gives a policy the same runs alone as beside others', async () => {
    const path = at.file('cell.yaml', quick());
    const alone = JSON.parse((await at.mendline(['run', path, '--json', '--policy', 'scrap at once'])).out);
    const beside = JSON.parse((await at.mendline(['compare', path, '--json'])).out);
    expect(alone.runs).toEqual(
      beside.runs.filter((run: { policy: string }) => run.policy === 'scrap at once'),
    );
  });
});

describe('a reader that closes the pipe', () => {
  it.each([
    ['compare', '--json'],
    ['run', '--json'],
    ['check', '--json'],
    ['explain', '--json'],
  ])('%s %s is no fault', async (command, flag) => {
    const child = at.start([command, at.file('cell.yaml', quick({ seeds: 40 })), flag]);
    child.stdout!.destroy();
    const { code, err } = await ended(child);
    expect({ code, err }).toEqual({ code: 0, err: '' });
  });
});
