import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DISTURBED, ended, quick, Scratch } from './command.ts';

let at: Scratch;
beforeEach(() => {
  at = new Scratch();
});
afterEach(() => at.remove());

const THIRD = '  inspect some:\n    - { do: inspect, at: gauging, every: 2, off-limits: scrap }\n';
const cell = () => at.file('cell.yaml', quick() + THIRD + DISTURBED);
const report = (folder: string) =>
  Object.fromEntries(
    readdirSync(join(at.path, folder)).map((name) => [
      name,
      readFileSync(join(at.path, folder, name), 'utf8'),
    ]),
  );
const decide = (...more: string[]) => at.mendline(['compare', 'cell.yaml', '--until-decided', ...more]);

describe('compare --until-decided', () => {
  it('chooses, and writes the same as page, JSON and CSV, the same bytes on any workers', async () => {
    cell();
    const words = ['--worth', '20 /h', '--seeds', '4'];
    const one = await decide(...words, '--workers', '1', '--out', 'a');
    expect(one).toMatchObject({ code: 0, err: '' });
    expect(one.out).toMatch(/is chosen after \d+ runs\./);
    const two = await decide(...words, '--workers', '2', '--out', 'b');
    expect(report('b')).toEqual(report('a'));
    expect(two.out).toBe(one.out.replace(join('a', 'sel'), join('b', 'sel')));
    expect(Object.keys(report('a')).sort()).toEqual(['runs.csv', 'selection.html', 'selection.json']);
    for (const line of one.out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
    const { command, worth, by, chosen, runs } = JSON.parse(report('a')['selection.json']!);
    expect(command).toEqual(['compare', 'cell.yaml', '--until-decided', ...words]);
    expect({ worth, by: by.key }).toEqual({ worth: 20, by: 'throughput_per_h' });
    expect(one.out).toContain(`${chosen} is chosen`);
    // Its runs are those of an ordinary comparison.
    const { out } = await at.mendline(['compare', 'cell.yaml', '--seeds', '2', '--no-twins', '--json']);
    const ordinary = JSON.parse(out).runs as { policy: string; seed: number; measures: unknown }[];
    for (const { policy, seed, measures } of ordinary)
      expect(runs).toContainEqual({ policy, seed, measures });

    const again = await at.mendline(['rerun', 'a', '--workers', '1']);
    expect(again).toMatchObject({ code: 0, err: '' });
    expect(again.out).toContain('All 3 files have the same bytes.');
  }, 60_000);

  it('goes by the measure that --worth names, in two stages', async () => {
    cell();
    const { out } = await decide(
      '--worth',
      'lead time=1 min',
      '--procedure',
      'two-stage',
      '--sure',
      '90 %',
      '--json',
    );
    const document = JSON.parse(out);
    expect(document).toMatchObject({
      procedure: 'two-stage',
      probability: 0.9,
      worth: 60,
      by: { key: 'lead_time_s' },
    });
    expect(document.rows.every(({ runs }: { runs: number }) => runs === document.rows[0].runs)).toBe(true);
  }, 60_000);

  it('ends undecided at the cap, and says what it would take', async () => {
    cell();
    const { code, out } = await decide('--worth', '0.01 /h', '--at-most', '12', '--out', 'a');
    expect(code).toBe(0);
    expect(out).toContain('Undecided after 12 runs');
  }, 60_000);

  it('out of time records what that sufficed for, so that it can be made again', async () => {
    cell();
    const { code, out, err } = await decide(
      '--worth',
      '0.01 /h',
      '--at-most',
      '10000',
      '--within',
      '2 s',
      '--out',
      'a',
    );
    expect(code).toBe(0);
    const { command, at_most: most } = JSON.parse(report('a')['selection.json']!);
    expect(err).toBe(`mendline: the time is over, see --within; the report is that of --at-most ${most}.\n`);
    expect(out).toContain(`Undecided after ${most} runs`);
    expect(command.slice(-2)).toEqual(['--at-most', `${most}`]);
    const again = await at.mendline(['rerun', 'a']);
    expect(again.out).toContain('All 3 files have the same bytes.');
  }, 60_000);

  it('killed or interrupted goes on with --resume to the same bytes', async () => {
    cell();
    const words = ['--worth', '0.3 /h', '--at-most', '150'];
    await decide(...words, '--out', 'whole');
    const journal = join(at.path, 'a', 'runs.journal');
    for (const signal of ['SIGKILL', 'SIGINT'] as const) {
      const child = at.start(['compare', 'cell.yaml', '--until-decided', ...words, '--out', 'a', '--resume']);
      const end = ended(child);
      const size = () => {
        const found = statSync(journal, { throwIfNoEntry: false });
        return found?.size ?? 0;
      };
      const before = size();
      while (size() < before + 60_000) await setTimeout(5);
      child.kill(signal);
      expect((await end).code).toBe(signal === 'SIGINT' ? 130 : null);
    }
    const resumed = await decide(...words, '--out', 'a', '--resume', '--workers', '1');
    expect(resumed.err).toMatch(/going on from \S+: \d+ of at most 450 runs are there/);
    expect(report('a')).toEqual(report('whole'));
    // A lead of another size asks for other runs.
    const child = at.start(['compare', 'cell.yaml', '--until-decided', ...words, '--out', 'c']);
    const end = ended(child);
    while (!statSync(join(at.path, 'c', 'runs.journal'), { throwIfNoEntry: false })?.size)
      await setTimeout(5);
    await setTimeout(300);
    child.kill('SIGKILL');
    await end;
    const foreign = await decide('--worth', '0.2 /h', '--at-most', '150', '--out', 'c', '--resume');
    expect(foreign).toMatchObject({ code: 2, err: expect.stringContaining('it is of other settings') });
  }, 120_000);

  it('takes the first of policies that are the same in every run', async () => {
    at.file('cell.yaml', quick().replace(/ {2}scrap at once:\n.*\n/, '  also carry on: []\n'));
    const { out } = await decide('--worth', '1 /h', '--out', 'a');
    expect(out.replace(/\s+/g, ' ')).toContain(
      'carry on is chosen after 10 runs, the first of those that came to the same: also carry on had exactly its mean.',
    );
  }, 60_000);

  it('needs a value of the measure in every run', async () => {
    cell();
    const { code, err } = await decide('--worth', 'fit rate=1 %', '--out', 'a');
    expect(code).toBe(4);
    expect(err).toContain('it gives no value of fit rate, so that no policy can be chosen by it');
  }, 60_000);
});

describe('compare --until-decided refuses, with the remedy,', () => {
  it.each<[string, string[], string]>([
    ['no lead', [], 'needs the lead in throughput that is worth finding'],
    ['a lead in another measure', ['--by', 'lead time', '--worth', '1 /h'], '--worth "lead time=2 min"'],
    [
      'leads in two measures',
      ['--worth', '1 /h', '--worth', 'lead time=1 min'],
      'goes by one measure, here throughput',
    ],
    ['a lead of nothing', ['--worth', '0 /h'], 'is not above zero'],
    ['certainty', ['--worth', '1 /h', '--sure', '100 %'], 'no number of runs makes a choice certain'],
    [
      'a blind guess',
      ['--worth', '1 /h', '--sure', '30 %'],
      'is no more than a blind guess among 3 policies has',
    ],
    ['a number as probability', ['--worth', '1 /h', '--sure', '0.95'], '--sure "0.95" is no share'],
    [
      'a procedure there is none of',
      ['--worth', '1 /h', '--procedure', 'two-stages'],
      'did you mean "two-stage"?',
    ],
    ['one seed', ['--worth', '1 /h', '--seeds', '1'], '--seeds 1 is too few'],
    [
      'a cap below the first stage',
      ['--worth', '1 /h', '--at-most', '9'],
      '--at-most 9 is less than the first stage',
    ],
    [
      'a cap that is none',
      ['--worth', '1 /h', '--at-most', '0'],
      '--at-most expects a whole number from 1 to 10000',
    ],
    ['other files', ['--worth', '1 /h', '--also', 'svg'], '--also'],
  ])('%s', async (_, args, told) => {
    cell();
    const { code, out, err } = await decide(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(told);
  });

  it('a single policy', async () => {
    at.file('cell.yaml', quick().replace(/ {2}scrap at once:\n.*\n/, ''));
    const { code, err } = await decide('--worth', '1 /h');
    expect(code).toBe(2);
    expect(err).toContain('"carry on" is the only policy, so there is nothing to choose');
  });

  it.each(['--sure', '--procedure', '--at-most', '--within'])('%s without it', async (option) => {
    cell();
    const value = option === '--at-most' ? '20' : 'x';
    const { code, err } = await at.mendline(['compare', 'cell.yaml', option, value]);
    expect(code).toBe(2);
    expect(err).toMatch(new RegExp(`${option} is of use with --until-decided (?:or --half-width )?alone`));
  });
});
