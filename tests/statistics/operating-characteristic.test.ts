import { binomialDistribution } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { acceptanceProbability, shareAccepted } from '../../src/statistics/operating-characteristic.ts';

describe('the chance of acceptance', () => {
  // D19, D20: ISO 2859-1:1999, letters J and H at AQL 1 %, by the binomial law.
  it.each([
    [80, 2, 0.01, 0.953447],
    [80, 2, 0.02, 0.784419],
    [80, 2, 0.05, 0.230621],
    [50, 1, 0.01, 0.910565],
    [50, 1, 0.02, 0.735771],
    [50, 1, 0.05, 0.279432],
  ])('of a sample of %d with at most %d, at %d nonconforming', (sample, accept, share, expected) => {
    expect(Math.abs(acceptanceProbability(sample, accept, share) - expected)).toBeLessThan(0.5e-6);
  });

  // D19: 1.03 % and 6.52 % in MIL-STD-105E, table X-J.
  it('falls to 95 % and to 10 % where the table says', () => {
    expect(100 * shareAccepted(80, 2, 0.95)).toBeCloseTo(1.02978, 5);
    expect(100 * shareAccepted(80, 2, 0.1)).toBeCloseTo(6.51597, 5);
  });

  it('is the binomial sum of a general library', () => {
    for (const [sample, accept, share] of [
      [13, 0, 0.2],
      [125, 5, 0.03],
      [500, 21, 0.05],
    ] as const) {
      const sum = binomialDistribution(sample, share)!
        .slice(0, accept + 1)
        .reduce((a, b) => a + b, 0);
      expect(acceptanceProbability(sample, accept, share)).toBeCloseTo(sum, 8);
    }
  });

  it('is certain where the sample has no more than may be nonconforming', () => {
    expect(acceptanceProbability(4, 5, 0.5)).toBe(1);
  });
});
