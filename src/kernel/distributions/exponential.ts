import type { Distribution } from './distribution.ts';

export const exponential: Distribution<{ readonly mean: number }> = {
  mean: ({ mean }) => mean,
  variance: ({ mean }) => mean * mean,
  // 1 - u is never 0, so the logarithm is finite.
  sampler:
    ({ mean }, stream) =>
    () =>
      -mean * Math.log(1 - stream()),
};
