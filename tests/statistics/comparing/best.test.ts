import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { besideBest } from '../../../src/statistics/comparing/best.ts';
import { studentQuantile } from '../../../src/statistics/mean-interval.ts';
import { normals } from '../normals.ts';
import { chanceError } from '../printed.ts';

/** Ten runs about each mean with luck of their own: paired differences of any two vary alike. */
const WAVES = [
  [1, -1, 1, -1, 1, -1, 1, -1, 0, 0],
  [1, 1, -1, -1, 1, 1, -1, -1, 0, 0],
  [1, 1, 1, 1, -1, -1, -1, -1, 0, 0],
];
const systems = (means: readonly number[]) => means.map((mean, i) => WAVES[i]!.map((wave) => mean + wave));

describe('comparisons with the best', () => {
  // By hand: differences of any two have sum of squares 16, so standard error sqrt(16/9/10) = .421637; t(.975, 9) = 2.26216
  // (O01, which is one-sided .95 over two comparisons): half width .953810.
  const half = 2.26216 * Math.sqrt(16 / 90);

  it('show one best system', () => {
    const [worst, middle, best] = besideBest(systems([1, 3, 5]), 0.95, 'higher');
    expect(best).toMatchObject({ best: true, mayBeBest: true, difference: { lower: 0, value: 2 } });
    expect(best!.difference.upper).toBeCloseTo(2 + half, 5);
    expect(middle).toMatchObject({ best: false, mayBeBest: false, difference: { upper: 0, value: -2 } });
    expect(middle!.difference.lower).toBeCloseTo(-2 - half, 5);
    expect(worst!.difference.lower).toBeCloseTo(-4 - half, 5);
  });

  it('leave open which of two is best', () => {
    const [one, two, other] = besideBest(systems([4.5, 5, 1]), 0.95, 'higher');
    expect([one!.mayBeBest, two!.mayBeBest, other!.mayBeBest]).toEqual([true, true, false]);
    expect(one!.best || two!.best).toBe(false);
    expect(one!.difference.lower).toBeCloseTo(-0.5 - half, 5);
    expect(one!.difference.upper).toBeCloseTo(-0.5 + half, 5);
    expect(two!.difference.lower).toBeCloseTo(0.5 - half, 5);
  });

  it('are mirrored where lower is better', () => {
    const up = besideBest(systems([4.5, 5, 1]), 0.95, 'higher');
    const down = besideBest(systems([-4.5, -5, -1]), 0.95, 'lower');
    for (const [i, { difference, ...rest }] of down.entries()) {
      expect(up[i]).toMatchObject(rest);
      expect(difference.lower! + up[i]!.difference.upper!).toBeCloseTo(0, 9);
      expect(difference.upper! + up[i]!.difference.lower!).toBeCloseTo(0, 9);
    }
  });

  // Of two systems all follows from one difference, one-sided.
  it('of two systems are the one-sided t interval', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 3, maxLength: 9 }),
        (values) => {
          const n = values.length;
          const [own] = besideBest([values, values.map(() => 0)], 0.9, 'higher');
          const mean = values.reduce((sum, x) => sum + x, 0) / n;
          const sd = Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1));
          const reach = (studentQuantile(0.9, n - 1) * sd) / Math.sqrt(n);
          expect(own!.difference.upper).toBeCloseTo(Math.max(0, mean + reach), 9);
          expect(own!.difference.lower).toBeCloseTo(Math.min(0, mean - reach), 9);
        },
      ),
    );
  });

  it.each([
    ['equal', [0, 0, 0, 0]],
    ['slightly different', [0, 0.2, 0.4, 0.5]],
  ])('hold together under common luck for systems that are %s', (_how, means) => {
    const draw = normals(41);
    const tries = 2000;
    let covered = 0;
    for (let i = 0; i < tries; i++) {
      const luck = Array.from({ length: 8 }, draw);
      // Some of the luck in common, and spreads that differ.
      const values = means.map((mean, system) =>
        luck.map((shared) => mean + 2 * shared + (0.5 + system / 2) * draw()),
      );
      const all = besideBest(values, 0.9, 'higher').every(({ difference: { lower, upper } }, system) => {
        const others = means.filter((_, other) => other !== system);
        const exact = means[system]! - Math.max(...others);
        return lower! <= exact && exact <= upper!;
      });
      if (all) covered++;
    }
    expect(covered / tries).toBeGreaterThan(0.9 - chanceError(0.9, tries));
  });

  it('of systems that always give the same leave all of them open', () => {
    const found = besideBest(
      [
        [2, 3],
        [2, 3],
      ],
      0.95,
      'lower',
    );
    for (const own of found)
      expect(own).toMatchObject({
        best: false,
        mayBeBest: true,
        difference: { value: 0, lower: 0, upper: 0 },
      });
  });

  it('of one run have no ends', () => {
    const [own] = besideBest([[2], [3]], 0.95, 'higher');
    expect(own).toMatchObject({
      best: false,
      mayBeBest: true,
      difference: { value: -1, lower: null, upper: null },
    });
  });

  it('of one system or unequal runs are refused', () => {
    expect(() => besideBest([[1, 2]], 0.95, 'higher')).toThrow(RangeError);
    expect(() => besideBest([[1, 2], [1]], 0.95, 'higher')).toThrow(RangeError);
  });
});
