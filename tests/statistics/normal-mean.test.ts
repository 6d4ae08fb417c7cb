import { expect, it } from 'vitest';
import { normalMean } from '../../src/statistics/normal-mean.ts';

// Moments 0, 1, 3 of orders 1, 2, 4; the mean of the positive part is 1 / sqrt(2 pi); 0.1586553 lies above 1 (any text).
it.each([
  ['z', (z: number) => z, 0],
  ['its square', (z: number) => z * z, 1],
  ['its fourth power', (z: number) => z ** 4, 3],
  ['its positive part', (z: number) => Math.max(0, z), 1 / Math.sqrt(2 * Math.PI)],
  ['whether it lies above 1', (z: number) => Number(z > 1), 0.15865525393],
] as const)('the mean of %s over a normal variable', (_, value, exact) => {
  expect(normalMean(value, [0, 1, Number.POSITIVE_INFINITY], 0.25)).toBeCloseTo(exact, 9);
});
