import { sampleVariance } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { rinottConstant, rinottTotal } from '../../../src/statistics/selection/rinott.ts';
import { normals } from '../normals.ts';
import { chanceError, expectPrinted } from '../printed.ts';

describe("Rinott's constant", () => {
  // O07: Rinott (1978); R. E. Bechhofer, T. J. Santner and D. M. Goldsman (1995), Design and Analysis of Experiments for
  // Statistical Selection, Screening and Multiple Comparisons.
  it.each([
    [2, 0.9, 1.89575],
    [3, 0.9, 2.43117],
    [5, 0.9, 2.91636],
    [10, 0.9, 3.43736],
    [2, 0.95, 2.45247],
    [3, 0.95, 2.93719],
    [5, 0.95, 3.38541],
    [10, 0.95, 3.87527],
  ])('for %d systems, 20 runs first and %d is %d', (systems, confidence, h) => {
    expectPrinted(rinottConstant(systems, 20, confidence), h);
  });

  // One degree of freedom and two systems: a difference of two Cauchy variables is a Cauchy variable of scale 2.
  it('has its closed form for two systems and two runs', () => {
    expectPrinted(rinottConstant(2, 2, 0.9), 2 * Math.tan(0.4 * Math.PI));
  });
});

describe('selection in two stages', () => {
  it('takes ceil(h^2 S^2 / worth^2) runs, and not fewer than the first stage', () => {
    expect(rinottTotal(3, 10, 4, 1)).toBe(36);
    expect(rinottTotal(3, 10, 4.01, 1)).toBe(37);
    expect(rinottTotal(3, 10, 4, 10)).toBe(10);
  });

  // For two systems the statement is sharp, but for the runs that rounding up adds.
  it('chooses right as often as stated where the best leads by just what is worth finding', () => {
    const draw = normals(61);
    const tries = 1500;
    const h = rinottConstant(2, 8, 0.9);
    let right = 0;
    for (let i = 0; i < tries; i++) {
      const means = [1, 0].map((mean, system) => {
        const values = Array.from({ length: 8 }, () => mean + (3 + system) * draw());
        const total = rinottTotal(h, 8, sampleVariance(values), 1);
        while (values.length < total) values.push(mean + (3 + system) * draw());
        return values.reduce((sum, x) => sum + x, 0) / total;
      });
      if (means[0]! > means[1]!) right++;
    }
    expect(Math.abs(right / tries - 0.9)).toBeLessThan(chanceError(0.9, tries));
  });
});
