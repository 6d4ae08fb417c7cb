import { describe, expect, it } from 'vitest';
import { poissonChance, poissonExcess, poissonUpTo } from '../../src/statistics/poisson.ts';

describe('the Poisson law', () => {
  // By the definition, e^-m m^k / k!.
  it.each([0.3, 1.726, 10, 40])('of mean %d sums up its terms', (mean) => {
    let [term, sum] = [Math.exp(-mean), Math.exp(-mean)];
    for (let k = 0; k < 80; k++) {
      expect(poissonChance(k, mean)).toBeCloseTo(term, 10);
      expect(poissonUpTo(k, mean)).toBeCloseTo(sum, 10);
      term *= mean / (k + 1);
      sum += term;
    }
  });

  it('exceeds a level by the sum of the chances above it', () => {
    for (const level of [0, 1, 4, 12]) {
      let sum = 0;
      for (let k = level; k < 200; k++) sum += 1 - poissonUpTo(k, 7.5);
      expect(poissonExcess(level, 7.5)).toBeCloseTo(sum, 10);
    }
    expect(poissonExcess(-2, 7.5)).toBe(9.5);
  });

  // S. Ramanujan: at its mean the law's sum is 1/2 and two thirds of its largest term, nearly.
  it('holds for means of thousands', () => {
    expect(poissonUpTo(10_000, 10_000)).toBeCloseTo(0.5 + 2 / 3 / Math.sqrt(2 * Math.PI * 10_000), 5);
    expect(poissonUpTo(-1, 10_000)).toBe(0);
    expect(poissonUpTo(12_000, 10_000)).toBeCloseTo(1, 12);
  });
});
