import { exp, ln, ln1p, square } from '../elementary.ts';
import type { Distribution } from './distribution.ts';
import { fillNormal } from './normal.ts';

/** Given by the mean and standard deviation of the value itself, not of its logarithm. */
export const lognormal: Distribution<{ readonly mean: number; readonly sd: number }> = {
  mean: ({ mean }) => mean,
  variance: ({ sd }) => sd * sd,
  fill: ({ mean, sd }, stream) => {
    const logVariance = ln1p(square(sd / mean));
    const logMean = ln(mean) - logVariance / 2;
    const logSd = Math.sqrt(logVariance);
    return (values) => {
      fillNormal(values, stream);
      for (let i = 0; i < values.length; i++) values[i] = exp(logMean + logSd * values[i]!);
    };
  },
};
