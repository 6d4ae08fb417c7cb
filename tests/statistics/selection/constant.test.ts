import { describe, expect, it } from 'vitest';
import { checkSelection, pointsOf, reached } from '../../../src/statistics/selection/constant.ts';

describe('points that stand for a law', () => {
  it('have the moments of the normal law', () => {
    const points = pointsOf(
      (t) => (-t * t) / 2,
      0,
      0.5,
      (t) => t,
    );
    const moment = (power: number) => points.reduce((sum, { x, weight }) => sum + weight * x ** power, 0);
    for (const [power, exact] of [1, 0, 1, 0, 3, 0, 15].entries())
      expect(moment(power)).toBeCloseTo(exact, 9);
  });

  // Chi-square with f degrees of freedom: mean f, variance 2 f.
  it.each([1, 5, 19])('have those of chi-square with %d degrees of freedom', (f) => {
    const points = pointsOf((t) => (f * t - Math.exp(t)) / 2, Math.log(f), Math.sqrt(2 / f) / 4, Math.exp);
    const mean = points.reduce((sum, { x, weight }) => sum + weight * x, 0);
    const variance = points.reduce((sum, { x, weight }) => sum + weight * (x - mean) ** 2, 0);
    expect(mean / f).toBeCloseTo(1, 7);
    expect(variance / (2 * f)).toBeCloseTo(1, 6);
  });
});

it('finds where a growing function reaches a value, near or far', () => {
  for (const root of [0.001, 0.9, 40, 1e6])
    expect(reached((h) => h ** 3, root ** 3) / root).toBeCloseTo(1, 9);
});

describe('a selection', () => {
  it.each([
    [1, 10, 0.95],
    [3, 1, 0.95],
    [3, 10, 1 / 3],
    [3, 10, 1],
  ])('among %d systems, %d runs first, with probability %d is refused', (systems, first, confidence) => {
    expect(() => checkSelection(systems, first, confidence)).toThrow(RangeError);
  });
});
