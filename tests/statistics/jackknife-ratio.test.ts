import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jackknifeRatio } from '../../src/statistics/jackknife-ratio.ts';
import { meanInterval } from '../../src/statistics/mean-interval.ts';
import { ratioOfMeans } from '../../src/statistics/ratio-interval.ts';
import { normals } from './normals.ts';
import { chanceError } from './printed.ts';

// Hormone patches: B. Efron and R. J. Tibshirani, An Introduction to the Bootstrap, chapters 10, 11 and 25 (data and results from memory):
// ratio -0.0713, jackknife estimate of bias 0.0080, Fieller's 90 % interval -0.249 to 0.170.
const ABOVE = [-1200, 2601, -2705, 1982, -1290, 351, -638, -2719];
const BELOW = [8406, 2342, 8187, 8459, 4795, 3516, 4796, 10238];

describe('a ratio of means by the jackknife', () => {
  it('takes off the published bias of the plain ratio', () => {
    const plain = ratioOfMeans(ABOVE, BELOW, 0.9)!;
    expect(plain.value).toBeCloseTo(-0.0713, 4);
    expect(plain.value - jackknifeRatio(ABOVE, BELOW, 0.9)!.value).toBeCloseTo(0.008, 4);
    // The same book checks the other interval.
    expect(plain.lower).toBeCloseTo(-0.249, 3);
    expect(plain.upper).toBeCloseTo(0.17, 3);
  });

  // The jackknife of a mean is the mean itself.
  it('is the mean with its interval where all divisors are equal', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 2, maxLength: 20 }),
        fc.integer({ min: 1, max: 6 }),
        (above, comparisons) => {
          const plain = meanInterval(
            above.map((x) => x / 4),
            0.95,
            comparisons,
          );
          const found = jackknifeRatio(
            above,
            above.map(() => 4),
            0.95,
            comparisons,
          )!;
          for (const end of ['value', 'lower', 'upper'] as const)
            expect(Math.abs(found[end]! - plain[end]!)).toBeLessThan(
              1e-7 * (1 + Math.abs(plain.upper! - plain.lower!)),
            );
        },
      ),
    );
  });

  it('covers about as often as its level says', () => {
    const draw = normals(11);
    const tries = 3000;
    let covered = 0;
    for (let i = 0; i < tries; i++) {
      const luck = Array.from({ length: 20 }, draw);
      const { lower, upper } = jackknifeRatio(
        luck.map((shared) => 30 + 3 * shared + draw()),
        luck.map((shared) => 10 + shared + 0.5 * draw()),
        0.95,
      )!;
      if (lower! <= 3 && 3 <= upper!) covered++;
    }
    // The jackknife is right for many runs; what 20 leave is taken to be within half a percent.
    expect(Math.abs(covered / tries - 0.95)).toBeLessThan(chanceError(0.95, tries) + 0.005);
  });

  it('has no ends where nothing can be said of them, and is none without a divisor', () => {
    expect(jackknifeRatio([1, 1, 1], [0, 0, 5], 0.95)).toMatchObject({
      value: 0.6,
      lower: null,
      upper: null,
    });
    expect(jackknifeRatio([1], [2], 0.95)).toMatchObject({ value: 0.5, lower: null, upper: null });
    expect(jackknifeRatio([1, 2], [0, 0], 0.95)).toBeNull();
    expect(() => jackknifeRatio([], [], 0.95)).toThrow(RangeError);
    expect(() => jackknifeRatio([1, 2], [1], 0.95)).toThrow(RangeError);
  });
});
