import { expect, it } from 'vitest';
import { Learner } from '../../../src/statistics/charts/learner.ts';

it('takes the centre and sigma from the first readings: their mean, and the mean moving range / 1.128', () => {
  const learner = new Learner(4, 100);
  for (const value of [100, 103, 101, 102]) {
    expect(learner.done).toBe(false);
    learner.add(value);
  }
  expect(learner.done).toBe(true);
  expect(learner.centre).toBe(101.5);
  // Moving ranges 3, 2, 1; d2 of two values is 1.128 in the standard table.
  expect(learner.sigma).toBeCloseTo(2 / 1.128, 2);
});
