import { mean, variance } from 'simple-statistics';
import type { Distribution } from './distribution.ts';

/** Each listed value is as likely as the next. */
export const empirical: Distribution<{ readonly values: readonly number[] }> = {
  mean: ({ values }) => mean([...values]),
  variance: ({ values }) => variance([...values]),
  fill: ({ values: listed }, stream) => {
    const all = Float64Array.from(listed);
    return (values) => {
      for (let i = 0; i < values.length; i++) values[i] = all[Math.floor(stream() * all.length)]!;
    };
  },
};
