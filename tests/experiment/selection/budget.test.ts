import { expect, it } from 'vitest';
import { Budget } from '../../../src/experiment/selection/budget.ts';

it('tells how many runs there is time for at the pace so far', () => {
  let now = 100;
  const budget = new Budget(60, () => now);
  expect(budget.affordable(1)).toBe(Number.POSITIVE_INFINITY);
  now = 120;
  // 10 runs in 20 s, and 40 s left.
  expect(budget.affordable(10)).toBeCloseTo(20, 9);
  now = 160;
  expect(budget.affordable(10)).toBe(0);
  now = 200;
  expect(budget.affordable(10)).toBe(0);
});

it('may have no end', () => {
  let now = 0;
  const budget = new Budget(Number.POSITIVE_INFINITY, () => now);
  now = 1e9;
  expect(budget.affordable(1)).toBe(Number.POSITIVE_INFINITY);
});
