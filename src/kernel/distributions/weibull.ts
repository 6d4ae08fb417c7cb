import { gamma as gammaFunction } from 'simple-statistics';
import type { Distribution } from './distribution.ts';

/** Given by its mean and shape; the scale follows as mean / Gamma(1 + 1/shape). */
export const weibull: Distribution<{ readonly mean: number; readonly shape: number }> = {
  mean: ({ mean }) => mean,
  variance: ({ mean, shape }) =>
    mean * mean * (gammaFunction(1 + 2 / shape) / gammaFunction(1 + 1 / shape) ** 2 - 1),
  fill: ({ mean, shape }, stream) => {
    const scale = mean / gammaFunction(1 + 1 / shape);
    return (values) => {
      for (let i = 0; i < values.length; i++) {
        values[i] = scale * Math.exp(Math.log(-Math.log(1 - stream()) || Number.MIN_VALUE) / shape);
      }
    };
  },
};
