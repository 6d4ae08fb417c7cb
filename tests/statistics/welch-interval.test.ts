import { describe, expect, it } from 'vitest';
import { meanInterval } from '../../src/statistics/mean-interval.ts';
import { welchError, welchInterval } from '../../src/statistics/welch-interval.ts';
import { normals } from './normals.ts';
import { chanceError, expectPrinted } from './printed.ts';

describe('the difference of two independent means', () => {
  // O19: Welch (1938).
  it('has the published error and degrees of freedom', () => {
    const { error, freedom } = welchError([4, 9], [12, 10]);
    expectPrinted(freedom, 15.1958);
    expectPrinted(error, 1.11056);
  });

  // Samples alike in size and variance are worth n + n - 2, as Student's own test has it.
  it('of samples alike is worth all their degrees of freedom', () => {
    expect(welchError([3, 3], [8, 8]).freedom).toBeCloseTo(14, 12);
  });

  it('against a sample without spread is that of the other alone', () => {
    const values = [3, 5, 4, 6];
    const found = welchInterval(values, [2, 2, 2], 0.95);
    const alone = meanInterval(
      values.map((x) => x - 2),
      0.95,
    );
    expect(found.lower).toBeCloseTo(alone.lower!, 10);
    expect(found.upper).toBeCloseTo(alone.upper!, 10);
    expect(welchInterval([1, 1], [3, 3], 0.95)).toMatchObject({ value: -2, lower: -2, upper: -2 });
    expect(welchInterval([1], [3, 3], 0.95)).toMatchObject({ value: -2, lower: null, upper: null });
  });

  it('covers about as often as its level says', () => {
    const draw = normals(21);
    const tries = 4000;
    let covered = 0;
    for (let i = 0; i < tries; i++) {
      const { lower, upper } = welchInterval(
        Array.from({ length: 12 }, () => 1 + 2 * draw()),
        Array.from({ length: 10 }, () => 3 * draw()),
        0.95,
      );
      if (lower! <= 1 && 1 <= upper!) covered++;
    }
    expect(Math.abs(covered / tries - 0.95)).toBeLessThan(chanceError(0.95, tries));
  });
});
