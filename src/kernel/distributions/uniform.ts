import type { Distribution } from './distribution.ts';

export const uniform: Distribution<{ readonly low: number; readonly high: number }> = {
  mean: ({ low, high }) => (low + high) / 2,
  variance: ({ low, high }) => (high - low) ** 2 / 12,
  fill:
    ({ low, high }, stream) =>
    (values) => {
      for (let i = 0; i < values.length; i++) values[i] = low + (high - low) * stream();
    },
};
