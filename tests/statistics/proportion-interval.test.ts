import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { acceptanceProbability } from '../../src/statistics/operating-characteristic.ts';
import {
  boundWithoutHits,
  exactProportion,
  trialsWithoutHits,
  wilsonProportion,
} from '../../src/statistics/proportion-interval.ts';
import { expectPrinted } from './printed.ts';

/** The exact chance that the interval of `of` trials holds the probability `p`, by the binomial law. */
function coverage(interval: typeof exactProportion, of: number, p: number, level: number): number {
  const upTo = (k: number) => (k < 0 ? 0 : acceptanceProbability(of, k, p));
  let sum = 0;
  for (let hits = 0; hits <= of; hits++) {
    const { lower, upper } = interval(hits, of, level);
    if (lower! <= p && p <= upper!) sum += upTo(hits) - upTo(hits - 1);
  }
  return sum;
}

const PROBABILITIES = Array.from({ length: 99 }, (_, i) => (i + 0.5) / 99);

describe('the interval of a proportion', () => {
  // O11: NIST/SEMATECH e-Handbook 7.2.4.2.
  it('by Clopper and Pearson is the published one', () => {
    const found = exactProportion(4, 20, 0.9);
    expectPrinted(found.lower!, 0.0713539);
    expectPrinted(found.upper!, 0.401028);
    expect(found).toMatchObject({ value: 0.2, level: 0.9, runs: 20 });
  });

  // O12: Wilson (1927); NIST/SEMATECH e-Handbook 7.2.4.1.
  it('by Wilson is the published one', () => {
    const found = wilsonProportion(4, 20, 0.9);
    expectPrinted(found.lower!, 0.093118);
    expectPrinted(found.upper!, 0.378377);
  });

  // O13: Clopper and Pearson (1934), no hits, one-sided; a two-sided interval at 90 % has the same upper end.
  it.each([
    [10, 0.258866],
    [59, 0.0495076],
    [100, 0.029513],
  ])('without hits in %d trials goes up to %d', (trials, bound) => {
    expectPrinted(boundWithoutHits(trials, 0.95), bound);
    expectPrinted(exactProportion(0, trials, 0.9).upper!, bound);
  });

  // O13.
  it('takes 59 trials without a hit to show 5 % at 95 %', () => {
    expect(trialsWithoutHits(0.05, 0.95)).toBe(59);
  });

  it('by Clopper and Pearson never covers less often than its level', () => {
    for (const of of [1, 5, 20, 60])
      for (const p of PROBABILITIES)
        expect(coverage(exactProportion, of, p, 0.95)).toBeGreaterThanOrEqual(0.95);
  });

  // L. D. Brown, T. T. Cai and A. DasGupta (2001), Interval estimation for a binomial proportion, Stat. Sci. 16, 101-133: its mean coverage is
  // close to its level even for small n.
  it('by Wilson covers about as often as its level on average', () => {
    for (const of of [10, 40, 100]) {
      const mean = PROBABILITIES.reduce((sum, p) => sum + coverage(wilsonProportion, of, p, 0.95), 0) / 99;
      expect(Math.abs(mean - 0.95)).toBeLessThan(0.01);
    }
  });

  it('holds its value, lies between 0 and 1 and mirrors hits and misses', () => {
    const counts = fc
      .integer({ min: 1, max: 300 })
      .chain((of) => fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of)));
    fc.assert(
      fc.property(counts, fc.double({ min: 0.5, max: 0.999, noNaN: true }), ([hits, of], level) => {
        for (const interval of [exactProportion, wilsonProportion]) {
          const { value, lower, upper } = interval(hits, of, level);
          expect(lower!).toBeGreaterThanOrEqual(0);
          expect(lower!).toBeLessThanOrEqual(value);
          expect(upper!).toBeGreaterThanOrEqual(value);
          expect(upper!).toBeLessThanOrEqual(1);
          const mirrored = interval(of - hits, of, level);
          expect(mirrored.lower! + upper!).toBeCloseTo(1, 6);
        }
      }),
    );
  });

  it.each([
    [1, 0],
    [3, 2],
    [-1, 2],
    [0.5, 2],
  ])('of %d of %d is refused', (hits, of) => {
    expect(() => exactProportion(hits, of, 0.95)).toThrow(RangeError);
    expect(() => wilsonProportion(hits, of, 0.95)).toThrow(RangeError);
  });
});
