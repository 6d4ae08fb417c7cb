import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studentQuantile } from '../../src/statistics/mean-interval.ts';
import {
  runsForHalfWidth,
  sizeForDifference,
  sizeForMean,
  sizeForProportion,
} from '../../src/statistics/sample-size.ts';

describe('how many values are needed', () => {
  // O15: the textbook formulas.
  it('is as published', () => {
    expect(sizeForMean(10, 2, 0.95)).toBe(97);
    expect(sizeForProportion(0.5, 0.05, 0.95)).toBe(385);
    expect(sizeForDifference(10, 5, 0.95, 0.9)).toBe(85);
  });

  it('for a t interval is the fewest runs that make it narrow enough', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.double({ min: 0.2, max: 10, noNaN: true }),
        fc.integer({ min: 1, max: 20 }),
        (sd, half, comparisons) => {
          const p = 1 - 0.05 / (2 * comparisons);
          const width = (n: number) => (studentQuantile(p, n - 1) * sd) / Math.sqrt(n);
          const runs = runsForHalfWidth(sd, half, 0.95, comparisons);
          expect(width(runs)).toBeLessThanOrEqual(half);
          if (runs > 2) expect(width(runs - 1)).toBeGreaterThan(half);
        },
      ),
    );
  });

  it('is two without spread, and no number where the interval is to have no width', () => {
    expect(runsForHalfWidth(0, 0, 0.95)).toBe(2);
    expect(runsForHalfWidth(1, 0, 0.95)).toBe(Number.POSITIVE_INFINITY);
  });
});
