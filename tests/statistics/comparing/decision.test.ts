import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide } from '../../../src/statistics/comparing/decision.ts';

/** `n` values (even) with this mean and sample standard deviation. */
function values(n: number, mean: number, sd: number): number[] {
  const off = sd * Math.sqrt((n - 1) / n);
  return Array.from({ length: n }, (_, i) => mean + (i % 2 === 0 ? off : -off));
}

const level = 0.95;

describe('what is said of a difference', () => {
  // O01: t = 2.26216 with 9 degrees of freedom; with this spread the half width is 2.26216 itself.
  const ten = (mean: number) => values(10, mean, Math.sqrt(10));

  it.each([
    [2.3, 0, 'better', 'better'],
    [-2.3, 0, 'worse', 'worse'],
    [2.2, 0, 'undecided', null],
    [2.3, 0.1, 'undecided', 'better'],
    [2.3, 5, 'no difference worth having', 'better'],
    [0, 2.3, 'no difference worth having', null],
    [0, 2.2, 'undecided', null],
    [-7.3, 5, 'worse', 'worse'],
    [-7.2, 5, 'undecided', 'worse'],
  ] as const)('of %d where %d is worth having is: %s', (mean, worth, word, surely) => {
    expect(decide(ten(mean), { better: 'higher', worth, level })).toMatchObject({ word, surely });
  });

  it('is the other way round where lower is better, and leaves the difference as it is', () => {
    const found = decide(ten(-2.3), { better: 'lower', worth: 0, level });
    expect(found).toMatchObject({ word: 'better', surely: 'better' });
    expect(found.difference.value).toBeCloseTo(-2.3, 12);
  });

  it('heeds how many comparisons there are', () => {
    expect(decide(ten(2.3), { better: 'higher', worth: 0, level, comparisons: 3 })).toMatchObject({
      word: 'undecided',
    });
  });

  // Paired differences with mean 1 and standard deviation 4: t(63) x 4/8 = .9992 < 1 and t(62) x 4/sqrt(63) = 1.007 > 1,
  // with t = 1.9983 and 1.9990 of the table.
  it('says about how many more runs would decide', () => {
    expect(decide(values(10, 1, 4), { better: 'higher', worth: 0, level }).more).toBe(64 - 10);
  });

  it('would be decided by as many more runs, were mean and spread what they seem', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.integer({ min: 1, max: 6 }),
        (mean, sd, worth, comparisons) => {
          fc.pre(Math.abs(Math.abs(mean) - worth) > 0.05);
          const criterion = { better: 'higher' as const, worth, level, comparisons };
          const { word, more } = decide(values(10, mean, sd), criterion);
          if (word !== 'undecided') {
            expect(more).toBeNull();
            return;
          }
          // One or two above, since the values made here are even in number and the ends touch.
          const needed = 10 + more!;
          const later = decide(values(needed + (needed % 2) + 2, mean, sd), criterion);
          expect(later.word).not.toBe('undecided');
        },
      ),
    );
  });

  it('is undecided without a number where it cannot be told', () => {
    const criterion = { better: 'higher', worth: 1, level } as const;
    expect(decide([5], criterion)).toMatchObject({ word: 'undecided', surely: null, more: null });
    expect(decide([0, 2], criterion)).toMatchObject({ word: 'undecided', more: null });
  });

  it('of runs that all give the same is decided', () => {
    const criterion = { better: 'higher', worth: 0, level } as const;
    expect(decide([0, 0], criterion).word).toBe('no difference worth having');
    expect(decide([0.1, 0.1], criterion).word).toBe('better');
  });
});
