import { exp, ln, square } from '../elementary.ts';
import { gammaFunction } from '../gamma-function.ts';
import type { Distribution } from './distribution.ts';

/** Given by its mean and shape; the scale follows as mean / Gamma(1 + 1/shape). */
export const weibull: Distribution<{ readonly mean: number; readonly shape: number }> = {
  mean: ({ mean }) => mean,
  variance: ({ mean, shape }) =>
    mean * mean * (gammaFunction(1 + 2 / shape) / square(gammaFunction(1 + 1 / shape)) - 1),
  fill: ({ mean, shape }, stream) => {
    const scale = mean / gammaFunction(1 + 1 / shape);
    return (values) => {
      for (let i = 0; i < values.length; i++) {
        values[i] = scale * exp(ln(-ln(1 - stream()) || Number.MIN_VALUE) / shape);
      }
    };
  },
};
