import type { Distribution } from './distribution.ts';

export const exponential: Distribution<{ readonly mean: number }> = {
  mean: ({ mean }) => mean,
  variance: ({ mean }) => mean * mean,
  // 1 - u is never 0, so the logarithm is finite.
  fill:
    ({ mean }, stream) =>
    (values) => {
      for (let i = 0; i < values.length; i++) values[i] = -mean * Math.log(1 - stream());
    },
};
