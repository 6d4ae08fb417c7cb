import { expect, it } from 'vitest';
import { Sums } from '../../../src/line/probes/sums.ts';

// 2, 4, 4, 4, 5, 5, 7, 9: mean 5, mean square deviation 4; a much used textbook example. The offset tests the digits.
it.each([0, 1e9])('sums of values about %d give their mean and variance', (offset) => {
  const sums = new Sums();
  expect(sums.spread()).toBeNull();
  for (const value of [2, 4, 4, 4, 5, 5, 7, 9]) sums.add(offset + value);
  const { mean, variance } = sums.spread()!;
  expect(mean - offset).toBeCloseTo(5, 6);
  expect(variance).toBeCloseTo(4, 6);
  expect(sums.count).toBe(8);
});
