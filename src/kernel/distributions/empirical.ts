import { mean, variance } from 'simple-statistics';
import type { Distribution } from './distribution.ts';

/** Each listed value is as likely as the next. */
export const empirical: Distribution<{ readonly values: readonly number[] }> = {
  mean: ({ values }) => mean([...values]),
  variance: ({ values }) => variance([...values]),
  sampler:
    ({ values }, stream) =>
    () =>
      values[Math.floor(stream() * values.length)]!,
};
