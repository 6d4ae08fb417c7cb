import { describe, expect, it } from 'vitest';
import { movingAverage } from '../../../src/statistics/warm-up/moving-average.ts';

describe("Welch's moving average", () => {
  // O18: Welch (1983); A. M. Law, Simulation Modeling and Analysis, chapter 9.
  it('is the published one', () => {
    const found = movingAverage([2, 4, 7, 9, 8, 10, 11, 9, 10, 10], 2);
    expect(found).toHaveLength(8);
    for (const [i, value] of [2, 4.33333, 6, 7.6, 9, 9.4, 9.6, 10].entries())
      expect(found[i]).toBeCloseTo(value, 5);
  });

  it('over one reading is the series, and of a series shorter than its window is none', () => {
    expect(movingAverage([3, 1, 2], 0)).toEqual([3, 1, 2]);
    expect(movingAverage([3, 1, 2], 5)).toEqual([]);
  });
});
