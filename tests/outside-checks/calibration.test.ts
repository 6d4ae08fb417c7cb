import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Calibration, drawn, holds } from './calibration/calibration.ts';
import { GROUPS } from './calibration/cases/index.ts';
import { judge } from './calibration/judge.ts';
import { EXPERIMENTS, table } from './calibration/table.ts';

const cases = GROUPS.flatMap((group) => group.cases);

/** Experiments of a short check: on plain draws, and on lines, which cost more. */
const SHORT = { draws: 400, lines: 60 } as const;
/** Seeds are fixed, so a check that passes once passes until something changes. */
const STANDARD_ERRORS = 3.5;

/** How many of `tries` experiments count. */
const hitsOf = ({ experiment }: Calibration, tries: number): number =>
  Array.from({ length: tries }, (_, number) => experiment(number)).filter(Boolean).length;

for (const group of GROUPS)
  describe(`${group.title}, right as often as they say`, () => {
    for (const of of group.cases)
      it(`${of.id}: ${of.what}`, () => {
        const tries = of.id.startsWith('line') ? SHORT.lines : SHORT.draws;
        const hits = hitsOf(of, tries);
        const { share, passed } = judge(of, hits, tries, STANDARD_ERRORS);
        expect(passed, `${share.value} of ${tries}`).toBe(true);
        if (of.theory === null) return;
        const error = Math.sqrt((of.theory * (1 - of.theory)) / tries);
        expect(Math.abs(share.value - of.theory)).toBeLessThan(STANDARD_ERRORS * error + 1e-9);
      });
  });

describe('reports/interval-calibration.md', () => {
  const report = readFileSync(join(import.meta.dirname, '../../reports/interval-calibration.md'), 'utf8');
  const rows = report
    .split('\n')
    .filter((line) => line.startsWith('| ') && !line.includes('| --- |') && !line.startsWith('| case |'));

  it('holds every case as it stands, and nothing else; run npm run calibrate-intervals', () => {
    const missing = cases.filter(
      ({ id, what, source, exact }) =>
        !rows.some((row) => row.startsWith(`| ${id} | ${what} | ${source} | ${exact} |`)),
    );
    expect(missing.map(({ id }) => id)).toEqual([]);
    expect(rows.length).toBe(cases.length);
  });

  it('shows that all passed', () => {
    expect(rows.filter((row) => !row.endsWith(' | yes |'))).toEqual([]);
  });

  it('tells the cases apart', () => {
    expect(new Set(cases.map(({ id }) => id)).size).toBe(cases.length);
  });
});

const fake = (claim: Calibration['claim'], stated: number): Calibration =>
  drawn({
    ...{ id: 'fake', what: 'a made-up case', source: 'none', exact: '0', claim, stated },
    experiment: ({ even }) => even() < 0.95,
  });

describe('how a case is judged', () => {
  const passed = (claim: Calibration['claim'], stated: number, share: number, slack?: number) =>
    judge(fake(claim, stated), Math.round(share * EXPERIMENTS), EXPERIMENTS, slack).passed;

  it.each([
    [0.934, false],
    [0.935, true],
    [0.965, true],
    [0.966, false],
  ])('a single interval that covers in a share of %d', (share, pass) => {
    expect(passed('covers', 0.95, share)).toBe(pass);
  });

  // Wilson's interval of 2,000 reaches about 1.96 sqrt(.95 x .05/2000) = 0.0096 up.
  it.each([
    [0.938, false],
    [0.942, true],
    [1, true],
  ])('what is to be right in at least 95 %% and is so in %d', (share, pass) => {
    expect(passed('at least', 0.95, share)).toBe(pass);
  });

  it.each([
    [0.055, true],
    [0.0555, false],
    [0, true],
  ])('what is to be wrong in at most 5.5 %% and is so in %d', (share, pass) => {
    expect(passed('at most', 0.05, share)).toBe(pass);
  });

  it('grants standard errors to few experiments, and no more', () => {
    expect(passed('covers', 0.95, 0.92, 3.5)).toBe(true);
    expect(passed('covers', 0.95, 0.91, 3.5)).toBe(false);
    expect(passed('at most', 0.05, 0.07, 3.5)).toBe(true);
    expect(passed('at most', 0.05, 0.08, 3.5)).toBe(false);
  });

  // Were intervals of 90 % taken for those of 95 %, it would be seen.
  it('finds out intervals that are too narrow', () => {
    const share = (level: number) => {
      const of = drawn({
        ...{ id: 'even', what: '', source: '', exact: '', claim: 'covers' },
        experiment: ({ even }) => even() < level,
      });
      return judge(of, hitsOf(of, EXPERIMENTS), EXPERIMENTS).passed;
    };
    expect(share(0.95)).toBe(true);
    expect(share(0.9)).toBe(false);
    expect(share(0.98)).toBe(false);
  });

  it('takes an open end for one that goes on for ever, and no interval for a miss', () => {
    expect(holds({ lower: null, upper: 2 }, -1e9)).toBe(true);
    expect(holds({ lower: null, upper: 2 }, 3)).toBe(false);
    expect(holds({ lower: 1, upper: null }, 3)).toBe(true);
    expect(holds(null, 3)).toBe(false);
  });
});

it('the report says which cases do not pass, and by which version', () => {
  const of = fake('covers', 0.95);
  const page = (hits: number) =>
    table([{ title: 'Made up', cases: [{ of, judgement: judge(of, hits, EXPERIMENTS) }] }], '1.2.3');
  expect(page(1900)).toContain('by mendline 1.2.3. All pass.');
  expect(page(1900)).toContain('| 95.00 % | 93.96 % to 95.87 % | 93.5 to 96.5 % | yes |');
  expect(page(1800)).toContain('**1 do not pass.**');
  expect(page(1800)).toContain(' | **NO** |');
});
