import { expect, it } from 'vitest';
import { gathered } from '../../../src/line/prediction/gather.ts';
import { normalShare } from '../../../src/statistics/normal.ts';

const many = Array.from({ length: 5000 }, (_, i) => ({
  share: 1 / 5000,
  mean: [100 + ((i * 7) % 5000) / 1000],
  covariance: [[0.04 + (i % 2) * 0.01]],
}));

// Total mean and variance: any text (law of total variance).
it('many conditions become few of the same law', () => {
  const few = gathered(many);
  expect(few.length).toBeLessThanOrEqual(200);
  const sum = (of: (it: (typeof many)[number]) => number, list: typeof many) =>
    list.reduce((total, it) => total + it.share * of(it), 0);
  const fewer = few as typeof many;
  for (const of of [
    () => 1,
    ({ mean }: (typeof many)[number]) => mean[0]!,
    ({ mean, covariance }: (typeof many)[number]) => covariance[0]![0]! + (mean[0]! - 102.5) ** 2,
  ])
    expect(sum(of, fewer)).toBeCloseTo(sum(of, many), 9);
  // Neighbours differ in their variance, so the shape is right but for a little.
  const below = ({ mean, covariance }: (typeof many)[number]) =>
    normalShare((100.1 - mean[0]!) / Math.sqrt(covariance[0]![0]!));
  expect(Math.abs(sum(below, fewer) - sum(below, many))).toBeLessThan(1e-4);
});

it('few stay as they are', () => {
  const few = many.slice(0, 3);
  expect(gathered(few)).toBe(few);
});
