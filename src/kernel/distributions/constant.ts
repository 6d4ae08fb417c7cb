import type { Distribution } from './distribution.ts';

export const constant: Distribution<{ readonly value: number }> = {
  mean: ({ value }) => value,
  variance: () => 0,
  fill:
    ({ value }) =>
    (values) => {
      values.fill(value);
    },
};
