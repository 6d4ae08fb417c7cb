import { describe, expect, it } from 'vitest';
import { fixedWidthInterval, fixedWidthTotal } from '../../src/statistics/fixed-width.ts';
import { normals } from './normals.ts';
import { chanceError } from './printed.ts';

describe('an interval of fixed width', () => {
  // t(.975, 9) = 2.26216 (O01), sample variance 90/9 = 10: ceil(2.26216^2 x 10 / .25) = ceil(204.7).
  it('takes as many runs as the first stage asks for', () => {
    const first = Array.from({ length: 10 }, (_, i) => (i % 2 === 0 ? 3 : -3));
    expect(fixedWidthTotal(first, 0.5, 0.95)).toBe(205);
    expect(fixedWidthTotal(first, 5, 0.95)).toBe(10);
    expect(fixedWidthTotal([2, 2], 0.1, 0.95)).toBe(2);
    // t at 1 - .05/6 with 19 degrees of freedom is 2.62511 (O10).
    const twenty = Array.from({ length: 20 }, (_, i) => (i % 2 === 0 ? 1 : -1) * Math.sqrt(19));
    expect(fixedWidthTotal(twenty, 1, 0.95, 3)).toBe(Math.ceil(2.62511 ** 2 * 20));
  });

  // Stein (1945): exact but for rounding the number of runs up, which adds the less the more runs there are.
  it('covers as often as its level says, whatever the spread', () => {
    const draw = normals(101);
    const tries = 1500;
    for (const sd of [2, 4]) {
      let covered = 0;
      for (let i = 0; i < tries; i++) {
        const values = Array.from({ length: 6 }, () => 10 + sd * draw());
        const total = fixedWidthTotal(values, 1, 0.9);
        while (values.length < total) values.push(10 + sd * draw());
        const { lower, upper } = fixedWidthInterval(values, total, 1, 0.9);
        if (lower! <= 10 && 10 <= upper!) covered++;
      }
      expect(covered / tries).toBeGreaterThan(0.9 - chanceError(0.9, tries));
      expect(covered / tries).toBeLessThan(0.915 + chanceError(0.915, tries));
    }
  });

  it('has no ends before all its runs are there', () => {
    expect(fixedWidthInterval([1, 3], 3, 0.5, 0.9)).toMatchObject({
      value: 2,
      lower: null,
      upper: null,
      runs: 2,
    });
    expect(fixedWidthInterval([1, 3, 5], 3, 0.5, 0.9)).toMatchObject({ value: 3, lower: 2.5, upper: 3.5 });
  });

  it('of one run, or of no width, is refused', () => {
    expect(() => fixedWidthTotal([1], 1, 0.9)).toThrow(RangeError);
    expect(() => fixedWidthTotal([1, 2], 0, 0.9)).toThrow(RangeError);
  });
});
