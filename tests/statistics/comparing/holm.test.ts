import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceOfNone, holm } from '../../../src/statistics/comparing/holm.ts';
import { meanInterval } from '../../../src/statistics/mean-interval.ts';
import { normals } from '../normals.ts';
import { chanceError } from '../printed.ts';

describe('several tests together', () => {
  // By hand after Holm (1979): 4 x .005, 3 x .01, 2 x .03 and again .06, since .04 comes after.
  it('are adjusted step by step', () => {
    const found = holm([0.01, 0.04, 0.03, 0.005]);
    for (const [i, p] of [0.03, 0.06, 0.06, 0.02].entries()) expect(found[i]).toBeCloseTo(p, 12);
  });

  it('find all that Bonferroni finds, keep their order and stay chances', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 12 }),
        (chances) => {
          const found = holm(chances);
          for (const [i, p] of chances.entries()) {
            expect(found[i]!).toBeGreaterThanOrEqual(p);
            expect(found[i]!).toBeLessThanOrEqual(Math.min(1, chances.length * p) + 1e-15);
            for (const [j, q] of chances.entries())
              if (p <= q) expect(found[i]!).toBeLessThanOrEqual(found[j]!);
          }
        },
      ),
    );
  });

  it('call some equal systems different at most as often as the level says', () => {
    const draw = normals(31);
    const tries = 2000;
    let wrong = 0;
    for (let i = 0; i < tries; i++) {
      // Four systems against one that they share: the tests hang together.
      const base = Array.from({ length: 10 }, draw);
      const chances = [0, 1, 2, 3].map(() => chanceOfNone(base.map((x) => x - draw())));
      if (holm(chances).some((p) => p <= 0.05)) wrong++;
    }
    expect(wrong / tries).toBeLessThan(0.05 + chanceError(0.05, tries));
    expect(wrong).toBeGreaterThan(0);
  });
});

describe('the chance that there is no difference', () => {
  it('is a level at which the interval just touches zero', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -5, max: 6, noNaN: true }), { minLength: 3, maxLength: 12 }),
        (values) => {
          const chance = chanceOfNone(values);
          if (chance < 1e-6 || chance > 0.99) return;
          const { value, lower, upper } = meanInterval(values, 1 - chance);
          expect(Math.abs(value > 0 ? lower! : upper!)).toBeLessThan(1e-5);
        },
      ),
    );
  });

  // O01: t = 2.26216 with 9 degrees of freedom leaves 2.5 % on each side.
  it('goes by the table of t', () => {
    const values = Array.from({ length: 10 }, (_, i) => (i % 2 === 0 ? 1 : -1) * 3 + 2.26216);
    // Ten values at +-3 about their mean: standard error sqrt(90/9/10) = 1.
    expect(chanceOfNone(values)).toBeCloseTo(0.05, 5);
  });

  it('without spread is none or all', () => {
    expect(chanceOfNone([0, 0, 0])).toBe(1);
    expect(chanceOfNone([2, 2, 2])).toBe(0);
    expect(chanceOfNone([2])).toBe(1);
  });
});
