import { mean, variance } from 'simple-statistics';
import { expect, it } from 'vitest';
import { evenPoints } from '../../src/statistics/even-points.ts';

it.each([2, 3, 16, 200])('%d even points have the mean and the variance that are asked for', (points) => {
  const found = evenPoints(3, 2, points);
  expect(found).toHaveLength(points);
  expect(mean(found)).toBeCloseTo(3, 12);
  expect(variance(found)).toBeCloseTo(4, 12);
});

// 0, 1, 2, 3, 4: mean 2, variance (5^2 - 1) / 12 = 2; any text on the discrete uniform law.
it('as many points as whole numbers are these numbers', () => {
  expect(evenPoints(2, Math.SQRT2, 5)).toEqual([0, 1, 2, 3, 4].map((whole) => expect.closeTo(whole, 12)));
  expect(evenPoints(2, 1, 1)).toEqual([2]);
});
