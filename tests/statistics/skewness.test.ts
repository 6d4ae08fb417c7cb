import { describe, expect, it } from 'vitest';
import { skewnessOf } from '../../src/statistics/skewness.ts';
import { normals } from './normals.ts';
import { chanceError } from './printed.ts';

describe('skewness', () => {
  // A share p of ones among zeros has skewness (1 - 2p)/sqrt(p (1 - p)) by definition: for p = 1/10, 8/3.
  it('of one in ten is 8/3, for which the rule asks for 178 runs', () => {
    const values = Array.from({ length: 100 }, (_, i) => (i % 10 === 0 ? 1 : 0));
    const found = skewnessOf(values);
    expect(found.value).toBeCloseTo(8 / 3, 12);
    // 25 (8/3)^2 = 177.8.
    expect(found).toMatchObject({ runs: 178, doubtful: true });
    expect(skewnessOf([...values, ...values]).doubtful).toBe(false);
  });

  it('has the sign of the longer tail and none for a law that is even or without spread', () => {
    expect(skewnessOf([0, 0, 0, 1]).value).toBeGreaterThan(0);
    expect(skewnessOf([0, 1, 1, 1]).value).toBeLessThan(0);
    expect(skewnessOf([1, 2, 3])).toMatchObject({ value: 0, doubtful: false });
    expect(skewnessOf([2, 2, 2, 2, 2])).toMatchObject({ value: 0, doubtful: false });
    expect(skewnessOf([])).toMatchObject({ value: 0, doubtful: false });
  });

  it('of values that differ by rounding alone is none', () => {
    const values = [0.3, 0.1 + 0.2, 0.3, 0.3, 0.3, 0.3];
    expect(new Set(values).size).toBe(2);
    expect(skewnessOf(values)).toMatchObject({ value: 0, doubtful: false });
  });

  // Beyond two standard errors lie about 5 % of samples of a normal law; the rule can only take some of them out.
  it('of normal values is seldom called doubtful', () => {
    const draw = normals(5);
    const tries = 2000;
    for (const n of [5, 10, 30]) {
      let doubtful = 0;
      for (let i = 0; i < tries; i++) if (skewnessOf(Array.from({ length: n }, draw)).doubtful) doubtful++;
      expect(doubtful / tries).toBeLessThan(0.05 + chanceError(0.05, tries));
    }
  });

  it('of twenty lognormal values is called doubtful mostly', () => {
    const draw = normals(6);
    let doubtful = 0;
    for (let i = 0; i < 500; i++)
      if (skewnessOf(Array.from({ length: 20 }, () => Math.exp(1.5 * draw()))).doubtful) doubtful++;
    expect(doubtful).toBeGreaterThan(450);
  });
});
