import { describe, expect, it } from 'vitest';
import { boxProbability } from '../../src/statistics/box-probability.ts';

const { POSITIVE_INFINITY, NEGATIVE_INFINITY } = Number;
const times = <T>(n: number, value: T): T[] => Array.from({ length: n }, () => value);
/** n variables of this mean that share a term of standard deviation `tau` and add one of `sigma`. */
const oneFactor = (n: number, sigma: number, tau: number) =>
  Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => tau * tau + (i === j ? sigma * sigma : 0)),
  );
const clear = { lower: 0, upper: POSITIVE_INFINITY };

describe('the share of normal variables that all keep their limits', () => {
  // D11: n pegs that share the hole's deviation, no margin, equal standard deviations: 1/(n + 1) (orthant probability at
  // correlation one half; Y. L. Tong 1990, The Multivariate Normal Distribution, from memory).
  it.each([2, 3, 4, 6, 8])('is 1/(n + 1) for %d pegs without margin', (n) => {
    const p = boxProbability(times(n, clear), times(n, 0), oneFactor(n, 1, 1));
    expect(Math.abs(p - 1 / (n + 1))).toBeLessThan(1e-5);
  });

  // D12: the same with a margin of three standard deviations; the values are one-dimensional quadratures of the
  // one-factor model, made elsewhere.
  it.each([
    [1, 0.983053],
    [2, 0.968795],
    [4, 0.945311],
    [8, 0.909839],
  ])('is that of the one-factor model for %d pegs with a margin', (n, exact) => {
    const p = boxProbability(times(n, clear), times(n, 0.03), oneFactor(n, 0.01, 0.01));
    expect(Math.abs(p - exact)).toBeLessThan(1e-5);
  });

  // D12: were they independent, the product of the single ones.
  it.each([
    [2, 0.966392],
    [4, 0.933914],
    [8, 0.872196],
  ])('is the product for %d independent pegs', (n, exact) => {
    const p = boxProbability(times(n, clear), times(n, 0.03), oneFactor(n, Math.hypot(0.01, 0.01), 0));
    expect(Math.abs(p - exact)).toBeLessThan(1e-6);
  });

  // Sheppard's formula for two variables: 1/4 + asin(rho)/(2 pi); any text on the bivariate normal law.
  it.each([-0.95, -0.5, 0, 0.3, 0.9, 0.99])('is that of a quadrant at correlation %d', (rho) => {
    const p = boxProbability([clear, clear], [0, 0], [
      [1, rho],
      [rho, 1],
    ]); // biome-ignore format: a matrix
    expect(Math.abs(p - (0.25 + Math.asin(rho) / (2 * Math.PI)))).toBeLessThan(1e-5);
  });

  // The orthant of three variables: 1/8 + (sum of the arcsines)/(4 pi); any text on the multivariate normal law.
  it('is that of an octant with three different correlations', () => {
    const [a, b, c] = [0.6, -0.2, 0.4];
    const p = boxProbability(times(3, clear), [0, 0, 0], [
      [1, a, b],
      [a, 1, c],
      [b, c, 1],
    ]); // biome-ignore format: a matrix
    const exact = 1 / 8 + (Math.asin(a) + Math.asin(b) + Math.asin(c)) / (4 * Math.PI);
    expect(Math.abs(p - exact)).toBeLessThan(1e-5);
  });

  // D08: a centred process within two-sided limits; D. C. Montgomery, process fallout table.
  it.each([
    [1, 2699.8],
    [1.33333, 63.3425],
    [1.66667, 0.573303],
  ])('of one variable is exact: at Cp %d, %d ppm are outside', (cp, ppm) => {
    const box = [{ lower: -3 * cp, upper: 3 * cp }];
    const outside = (1 - boxProbability(box, [0], [[1]])) * 1e6;
    expect(Math.abs(outside / ppm - 1)).toBeLessThan(1e-4);
  });

  it('takes variables that follow from others, or do not vary at all, for what they are', () => {
    const band = { lower: -1, upper: 1 };
    // 0.682689: a normal variable within one standard deviation, any table.
    const same = boxProbability([band, band], [0, 0], [
      [1, 1],
      [1, 1],
    ]); // biome-ignore format: a matrix
    expect(same).toBeCloseTo(0.682689, 4);
    const fixed = (at: number) =>
      boxProbability([band, band], [0, at], [
        [1, 0],
        [0, 0],
      ]); // biome-ignore format: a matrix
    expect(fixed(0.9)).toBeCloseTo(0.682689, 6);
    expect(fixed(1.1)).toBe(0);
  });

  it('is 1 without variables and without limits, and the same bits every time', () => {
    const open = { lower: NEGATIVE_INFINITY, upper: POSITIVE_INFINITY };
    expect(boxProbability([], [], [])).toBe(1);
    expect(boxProbability(times(3, open), [1, 2, 3], oneFactor(3, 1, 1))).toBeCloseTo(1, 12);
    const again = () => boxProbability(times(3, clear), [1, 2, 3], oneFactor(3, 1, 1));
    expect(again()).toBe(again());
  });

  it('refuses more variables than it knows', () => {
    expect(() => boxProbability(times(18, clear), times(18, 0), oneFactor(18, 1, 1))).toThrow(RangeError);
  });
});
