import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fewestForQuantile,
  quantileInterval,
  rankCoverage,
  rankPair,
} from '../../src/statistics/quantile-interval.ts';
import { normals } from './normals.ts';
import { chanceError, expectPrinted } from './printed.ts';

describe('the interval of a quantile', () => {
  // O14: H. A. David and H. N. Nagaraja, Order Statistics.
  it.each([
    [10, 0.5, 2, 9, 0.978516],
    [20, 0.5, 6, 15, 0.958611],
    [50, 0.9, 41, 50, 0.970308],
  ])(
    'of %d values for p = %d between ranks %d and %d covers as published',
    (n, p, lower, upper, coverage) => {
      expectPrinted(rankCoverage(n, p, lower, upper), coverage);
    },
  );

  it('takes the fewest ranks that cover often enough, and of these pairs the surest', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 40 }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.constantFrom(0.8, 0.9, 0.95, 0.99),
        (n, p, level) => {
          const all = [];
          for (let lower = 1; lower < n; lower++)
            for (let upper = lower + 1; upper <= n; upper++)
              all.push({ long: upper - lower, coverage: rankCoverage(n, p, lower, upper) });
          const good = all.filter(({ coverage }) => coverage >= level);
          const found = rankPair(n, p, level);
          if (good.length === 0) {
            expect(found).toBeNull();
            return;
          }
          const long = Math.min(...good.map((pair) => pair.long));
          const surest = Math.max(
            ...good.filter((pair) => pair.long === long).map(({ coverage }) => coverage),
          );
          expect(found!.upper - found!.lower).toBe(long);
          expect(found!.coverage).toBeCloseTo(surest, 12);
        },
      ),
    );
  });

  // The median: 1 - 2 (1/2)^n >= 0.95 from n = 6 on.
  it('needs six values for a median at 95 %', () => {
    expect(fewestForQuantile(0.5, 0.95)).toBe(6);
    expect(quantileInterval([5, 3, 1, 2, 4], 0.5, 0.95)).toMatchObject({
      value: 3,
      lower: null,
      upper: null,
    });
    expect(quantileInterval([5, 3, 1, 2, 4, 6], 0.5, 0.95)).toMatchObject({
      value: 3.5,
      lower: 1,
      upper: 6,
      runs: 6,
    });
  });

  // S. S. Wilks (1941): 0.95^59 < 0.05, so between the extremes of few values a far quantile does not lie surely.
  it('is there from the fewest values on and not before', () => {
    for (const p of [0.1, 0.5, 0.9, 0.95]) {
      const n = fewestForQuantile(p, 0.95);
      expect(rankPair(n, p, 0.95)).not.toBeNull();
      if (n > 2) expect(rankPair(n - 1, p, 0.95)).toBeNull();
    }
  });

  it('does not mind a skewed law: its ends move with the values', () => {
    const draw = normals(3);
    const values = Array.from({ length: 60 }, draw);
    const [plain, bent] = [
      quantileInterval(values, 0.8, 0.9),
      quantileInterval(values.map(Math.exp), 0.8, 0.9),
    ];
    expect(bent.lower).toBe(Math.exp(plain.lower!));
    expect(bent.upper).toBe(Math.exp(plain.upper!));
  });

  it('covers as often as its ranks say', () => {
    const draw = normals(4);
    const tries = 3000;
    const exact = Math.exp(1.2815515655); // the 0.9 quantile of a lognormal law
    const { coverage } = rankPair(80, 0.9, 0.95)!;
    let covered = 0;
    for (let i = 0; i < tries; i++) {
      const { lower, upper } = quantileInterval(
        Array.from({ length: 80 }, () => Math.exp(draw())),
        0.9,
        0.95,
      );
      if (lower! <= exact && exact <= upper!) covered++;
    }
    expect(Math.abs(covered / tries - coverage)).toBeLessThan(chanceError(coverage, tries));
  });

  it('of no value is refused', () => {
    expect(() => quantileInterval([], 0.5, 0.95)).toThrow(RangeError);
  });
});
