import { describe, expect, it } from 'vitest';
import { samplerOf } from '../../src/kernel/distributions/index.ts';
import { Streams } from '../../src/kernel/streams.ts';
import { meanInterval, studentQuantile } from '../../src/statistics/mean-interval.ts';
import { expectPrinted } from './printed.ts';

function halfWidth(values: readonly number[], level: number, comparisons = 1): number {
  const { lower, upper } = meanInterval(values, level, comparisons);
  return (upper! - lower!) / 2;
}

describe("Student's quantile", () => {
  // O01: standard table.
  it.each([
    [0.95, 4, 2.13185],
    [0.975, 9, 2.26216],
    [0.975, 10, 2.22814],
    [0.975, 19, 2.09302],
    [0.975, 29, 2.04523],
    [0.95, 9, 1.83311],
  ])('at %d with %d degrees of freedom is %d', (p, degrees, t) => {
    expectPrinted(studentQuantile(p, degrees), t);
  });

  // One degree of freedom is the Cauchy law: tan(pi (p - 1/2)). Two: (2p - 1)/sqrt(2 p (1 - p)).
  it('agrees with the closed forms for one and two degrees of freedom', () => {
    for (const p of [0.6, 0.9, 0.975, 0.999]) {
      expect(studentQuantile(p, 1) / Math.tan(Math.PI * (p - 0.5))).toBeCloseTo(1, 7);
      expect(studentQuantile(p, 2) / ((2 * p - 1) / Math.sqrt(2 * p * (1 - p)))).toBeCloseTo(1, 7);
    }
  });
});

describe('the interval of a mean', () => {
  // O02, O03: A. M. Law, Simulation Modeling and Analysis, chapters 4 and 9 (data from memory, agrees with the print).
  it.each([
    ['ten readings', [1.2, 1.5, 1.68, 1.89, 0.95, 1.49, 1.58, 1.55, 0.5, 1.09], 1.343, 0.237253],
    ['ten days of a bank', [1.53, 1.66, 1.24, 2.34, 2, 1.69, 2.69, 2.86, 1.7, 2.6], 2.031, 0.322283],
  ])('of %s at 90 percent is the published one', (_what, values, mean, half) => {
    const found = meanInterval(values, 0.9);
    expectPrinted(found.value, mean);
    expectPrinted(halfWidth(values, 0.9), half);
    expect(found).toMatchObject({ level: 0.9, runs: 10 });
  });

  // O04: the same book, chapter 10: two inventory policies, paired (data from memory).
  it('of paired differences is the published one', () => {
    const first = [126.97, 124.31, 126.68, 122.66, 127.23];
    const second = [118.21, 120.22, 122.45, 122.68, 119.4];
    const { value, lower, upper } = meanInterval(
      first.map((x, i) => x - second[i]!),
      0.9,
    );
    expectPrinted(value, 4.978);
    expectPrinted(lower!, 1.64913);
    expectPrinted(upper!, 8.30687);
  });

  // O10: t at 1 - 0.05/(2k) with 19 degrees of freedom. Values with standard deviation sqrt(20) show t itself.
  it.each([
    [1, 2.09302],
    [3, 2.62511],
    [6, 2.9439],
    [10, 3.17372],
  ])('is widened for %d comparisons by Bonferroni', (comparisons, t) => {
    // Ten at -a and ten at +a: sum of squares 20 a^2, sample variance 20 a^2/19.
    const a = Math.sqrt(19);
    const values = Array.from({ length: 20 }, (_, i) => (i % 2 === 0 ? a : -a));
    expectPrinted(halfWidth(values, 0.95, comparisons), t);
  });

  it('of one value is no interval', () => {
    expect(meanInterval([3.5], 0.95)).toMatchObject({ value: 3.5, lower: null, upper: null, runs: 1 });
  });

  it('of equal values has no width', () => {
    expect(meanInterval([2, 2, 2], 0.95)).toMatchObject({ value: 2, lower: 2, upper: 2, runs: 3 });
  });

  it('of no value is refused', () => {
    expect(() => meanInterval([], 0.95)).toThrow(RangeError);
  });

  // The t interval is exact for normal values, so the share of samples it covers is binomial about its level.
  it.each([
    [2, 0.9],
    [3, 0.95],
    [8, 0.95],
    [30, 0.99],
  ])('of %d normal values covers the true mean as often as its level %d says', (size, level) => {
    const samples = 4000;
    const draw = samplerOf({ distribution: 'normal', mean: 100, sd: 15 }, new Streams(size).of('coverage'));
    let covered = 0;
    for (let i = 0; i < samples; i++) {
      const { lower, upper } = meanInterval(Array.from({ length: size }, draw), level);
      if (lower! <= 100 && 100 <= upper!) covered++;
    }
    const error = Math.sqrt((level * (1 - level)) / samples);
    expect(Math.abs(covered / samples - level)).toBeLessThan(3.5 * error);
  });
});
