import type { Distribution } from './distribution.ts';
import { standardExponential } from './ziggurat.ts';

export const exponential: Distribution<{ readonly mean: number }> = {
  mean: ({ mean }) => mean,
  variance: ({ mean }) => mean * mean,
  fill:
    ({ mean }, stream) =>
    (values) => {
      for (let i = 0; i < values.length; i++) values[i] = mean * standardExponential(stream);
    },
};
