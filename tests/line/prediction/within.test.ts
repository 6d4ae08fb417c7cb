import { expect, it } from 'vitest';
import { shareOver, shareUnder, shareWithin } from '../../../src/line/prediction/within.ts';

/** Equicorrelated standard normal variables, one half; in so many equal conditions. */
const conditions = (n: number, number: number) =>
  Array.from({ length: number }, () => ({
    share: 1 / number,
    mean: Array.from({ length: n }, () => 0),
    covariance: Array.from({ length: n }, (_, i) =>
      Array.from({ length: n }, (__, j) => (i === j ? 1 : 0.5)),
    ),
  }));
const positive = (n: number) =>
  Array.from({ length: n }, () => ({ lower: 0, upper: Number.POSITIVE_INFINITY }));

// D11: all positive in 1 / (n + 1) of cases (Tong 1990, from memory). Many conditions share the points of one lattice.
it.each([
  [2, 1, 1e-5],
  [4, 1, 1e-5],
  [2, 500, 1e-4],
  [4, 500, 1e-4],
  [3, 10_000, 1e-4],
])('%d variables in %d conditions', (n, number, error) => {
  expect(Math.abs(shareWithin(positive(n), conditions(n, number)) - 1 / (n + 1))).toBeLessThan(error);
});

// Half of the parts at -1 and half at 1 with a sd of 1: below 0 the mean of F(1) and F(-1), below 2 of F(3) and F(1).
it('one variable in two conditions', () => {
  const two = [-1, 1].map((mean) => ({ share: 0.5, mean: [mean], covariance: [[1]] }));
  expect(shareUnder(0, two)).toBeCloseTo(0.5, 12);
  expect(shareUnder(2, two)).toBeCloseTo((0.998650102 + 0.8413447461) / 2, 9);
  expect(shareOver(2, two)).toBeCloseTo(1 - (0.998650102 + 0.8413447461) / 2, 9);
  expect(shareWithin([{ lower: 0, upper: 2 }], two)).toBeCloseTo((0.998650102 + 0.8413447461) / 2 - 0.5, 9);
});
