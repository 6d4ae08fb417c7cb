import { describe, expect, it } from 'vitest';
import { expectMean, RUNS } from './by-simulation.ts';
import type { Case } from './cases/case.ts';

/** Runs here are this many times shorter than those of the validation, so their intervals are wider by its root. */
const SHORTER = 25;
/** Rounding of sums over a run, for cases that nothing random enters. */
const ROUNDING = 1e-9;

function check(of: Case): void {
  const runs = of.values.some(({ exact }) => !exact) ? RUNS : 1;
  const given = Array.from({ length: runs }, (_, i) => of.run(of.length / SHORTER, i + 1));
  for (const [i, { quantity, expected, sharp, exact }] of of.values.entries()) {
    const values = given.map((one) => one[i]!);
    if (exact) expect(Math.abs(values[0]! / expected - 1), quantity).toBeLessThanOrEqual(ROUNDING);
    else expectMean(values, expected, sharp * Math.sqrt(SHORTER), quantity);
  }
}

/** Tests of the cases of the validation, each by shorter runs than there. */
export function checkCases(title: string, cases: readonly Case[]): void {
  describe(`${title}, by simulation`, { timeout: 60_000 }, () => {
    for (const of of cases) it(`${of.id}: ${of.what}`, () => check(of));
  });
}
