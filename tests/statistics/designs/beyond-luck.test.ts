import jstat from 'jstat';
import { expect, it } from 'vitest';
import { normalQuantile } from '../../../src/kernel/normal-quantile.ts';
import { Streams } from '../../../src/kernel/streams.ts';
import { chanceByLuck } from '../../../src/statistics/designs/beyond-luck.ts';

it('is the two-sided t test where there is one group', () => {
  // F with 1 and n - 1 degrees of freedom is the square of t, by definition.
  const values = [1.2, 0.4, -0.3, 2.2, 1.1];
  const mean = values.reduce((sum, x) => sum + x, 0) / 5;
  const variance = values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / 4;
  const t = mean / Math.sqrt(variance / 5);
  expect(chanceByLuck([values])).toBeCloseTo(2 * (1 - jstat.jStat.studentt.cdf(t, 4)), 8);
});

it('is below 5 % in 5 % of experiments in which nothing is changed', () => {
  const uniform = new Streams(7).of('beyond luck');
  const trials = 4000;
  let below = 0;
  for (let trial = 0; trial < trials; trial++) {
    const groups = Array.from({ length: 4 }, () => [0, 0, 0].map(() => normalQuantile(uniform() || 0.5)));
    if (chanceByLuck(groups)! < 0.05) below++;
  }
  // 4 standard errors of a share of 5 %.
  expect(Math.abs(below / trials - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / trials));
});

it('is certain where nothing varies, and says nothing of single values', () => {
  expect(chanceByLuck([[0, 0], [0, 0]])).toBe(1); // biome-ignore format: one line reads better
  expect(chanceByLuck([[1, 1], [0, 0]])).toBe(0); // biome-ignore format: one line reads better
  expect(chanceByLuck([[1], [2]])).toBeNull();
});
