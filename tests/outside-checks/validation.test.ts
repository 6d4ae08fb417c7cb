import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Case, caseOf } from './cases/case.ts';
import { GROUPS } from './cases/index.ts';
import { judge } from './validation/judge.ts';
import { AGAIN, RUNS, type Runner, validate } from './validation/rounds.ts';
import { table } from './validation/table.ts';

const cases = GROUPS.flatMap((group) => group.cases);

/** A row of the table up to what was simulated: it names the case, the value and what is expected. */
const rowOf = (of: Case, i: number, report: string): string | undefined => {
  const { quantity, unit, expected } = of.values[i]!;
  const named = unit ? `${quantity}, ${unit}` : quantity;
  return report
    .split('\n')
    .find(
      (line) =>
        line.startsWith(`| ${of.id} | ${of.what}`) &&
        line.includes(` | ${named} | ${Number(expected.toPrecision(6))} | `),
    );
};

describe('reports/validation.md', () => {
  const report = readFileSync(join(import.meta.dirname, '../../reports/validation.md'), 'utf8');
  const rows = report.split('\n').filter((line) => line.startsWith('| ') && !line.startsWith('| case | '));

  it('holds every value of every case as it stands, and nothing else; run npm run validate', () => {
    const missing = cases.flatMap((of) =>
      of.values.filter((_, i) => !rowOf(of, i, report)).map(({ quantity }) => `${of.id}: ${quantity}`),
    );
    expect(missing).toEqual([]);
    expect(rows.filter((row) => !row.includes('| --- |')).length).toBe(
      cases.reduce((sum, { values }) => sum + values.length, 0),
    );
  });

  it('shows that all passed', () => {
    expect(rows.filter((row) => !row.includes('| --- |') && !row.endsWith(' | yes |'))).toEqual([]);
  });

  // The published rows that a simulation can be held to; L18 and L19 are approximations.
  it('covers what it set out to cover', () => {
    const numbered = (letter: string, from: number, to: number) =>
      Array.from({ length: to - from + 1 }, (_, i) => `${letter}${String(from + i).padStart(2, '0')}`);
    const covered = new Set(cases.map(({ id }) => id.slice(0, 3)).filter((id) => /^[A-Z]\d\d$/.test(id)));
    expect([...covered].sort()).toEqual([
      ...numbered('D', 10, 14),
      ...numbered('D', 17, 21),
      ...['I01', 'I02', 'I04', 'I06', 'I07', 'I08'],
      ...numbered('L', 1, 17),
      ...numbered('L', 20, 24),
      ...['M02', 'M04', 'M05', 'M06', 'O16'],
      ...numbered('Q', 1, 15),
      ...numbered('S', 1, 6),
      ...numbered('S', 9, 11),
      ...numbered('S', 13, 15),
    ]);
  });

  it('tells the cases apart', () => {
    expect(new Set(cases.map(({ id }) => id)).size).toBe(cases.length);
  });
});

/** A case without a line: what its runs give is made up by each test. */
const fake = (exact: boolean, sharp = 0.5): Case =>
  caseOf<number>({
    ...{
      id: 'X1',
      what: 'a made-up case',
      source: 'none',
      length: 1,
      ...(exact && { exact: true as const }),
    },
    ...{ scenario: () => '', see: () => 0 },
    values: [{ quantity: 'number', expected: 10, sharp, of: (seen) => seen }],
  });

/** Runs whose values lie around `mean`: the same spread for any number of them. */
const around =
  (mean: number, later = mean): Runner =>
  async (_, seed) => [(seed % 1000 <= RUNS ? mean : later) + (seed % 2 ? 1 : -1)];

describe('how a value is judged', () => {
  const [value] = fake(false).values;
  const give = (mean: number, off: number) =>
    Array.from({ length: RUNS }, (_, i) => mean + (i % 2 ? off : -off));

  it('hits when the expected value lies inside the interval', () => {
    expect(judge(value!, give(10.2, 1))).toMatchObject({ hit: true, sharp: true });
    expect(judge(value!, give(11, 1))).toMatchObject({ hit: false, sharp: true });
  });

  it('does not let a wide interval pass, nor runs without spread', () => {
    expect(judge(value!, give(10, 100))).toMatchObject({ hit: true, sharp: false });
    expect(judge(value!, give(10, 0))).toMatchObject({ hit: true, sharp: false });
  });

  it('wants the value itself where nothing is random', () => {
    const [exact] = fake(true).values;
    expect(judge(exact!, [10, 10])).toMatchObject({ hit: true, sharp: true });
    expect(judge(exact!, [10.00001, 10.00001])).toMatchObject({ hit: false });
    expect(judge(exact!, [10.1, 9.9])).toMatchObject({ sharp: false });
  });
});

describe('the protocol for chance', () => {
  it('judges a value that hits once', async () => {
    expect(await validate(fake(false), around(10))).toMatchObject([{ second: null, passed: true }]);
  });

  it('judges a value that misses again, by four times the runs under fresh seeds', async () => {
    const seeds: number[] = [];
    const run = around(12, 10);
    const watched: Runner = (of, seed) => {
      seeds.push(seed);
      return run(of, seed);
    };
    const [verdict] = await validate(fake(false), watched);
    expect(verdict).toMatchObject({ first: { hit: false }, second: { hit: true }, passed: true });
    expect(verdict!.second!.estimate.runs).toBe(AGAIN);
    expect(new Set(seeds).size).toBe(RUNS + AGAIN);
  });

  it('fails a value that misses twice, and shows it in the table', async () => {
    const of = fake(false);
    const verdicts = await validate(of, around(12));
    expect(verdicts).toMatchObject([{ passed: false }]);
    const text = table([{ title: 'Made up', cases: [{ of, verdicts }] }]);
    expect(text).toContain('**1 do not pass.**');
    expect(text).toContain('| **NO** |');
  });

  it('gives each case seeds of its own', async () => {
    const used = new Map<number, string>();
    const twice: string[] = [];
    const take: Runner = async ({ id, values }, seed) => {
      if (used.has(seed)) twice.push(`${id} and ${used.get(seed)}`);
      used.set(seed, id);
      // Misses, so that both rounds are run.
      return values.map(({ expected }) => 2 * expected);
    };
    for (const of of cases) await validate(of, take);
    expect(twice).toEqual([]);
    expect(used.size).toBeGreaterThan(100 * cases.length);
  });

  it('fails a value whose interval is too wide, without a second chance', async () => {
    const verdicts = await validate(fake(false, 0.001), around(10));
    expect(verdicts).toMatchObject([{ second: null, passed: false }]);
  });
});
