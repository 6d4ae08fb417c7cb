import type { Distribution } from './distribution.ts';

export const uniform: Distribution<{ readonly low: number; readonly high: number }> = {
  mean: ({ low, high }) => (low + high) / 2,
  variance: ({ low, high }) => (high - low) ** 2 / 12,
  sampler:
    ({ low, high }, stream) =>
    () =>
      low + (high - low) * stream(),
};
