import { mean, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import {
  type Capability,
  capabilityIntervals,
  capabilityOf,
  ppmOutside,
} from '../../src/statistics/capability.ts';
import { meanRange } from '../../src/statistics/mean-range.ts';
import { ReadingSums } from '../../src/statistics/reading-sums.ts';
import { expectMean } from '../outside-checks/by-simulation.ts';
import { normals } from './normals.ts';

const within = (found: number, expected: number, by = 1e-5) =>
  expect(Math.abs(found / expected - 1), `${found}, expected ${expected}`).toBeLessThan(by);

describe('parts outside the limits', () => {
  it.each([
    [1, 2699.8],
    [1.1, 966.848],
    [1.2, 318.217],
    [4 / 3, 63.3425],
    [1.5, 6.79535],
    [5 / 3, 0.573303],
    [2, 0.00197318],
  ])('D08: of a centred process of Cp %d: Montgomery, process fallout', (cp, ppm) => {
    within(ppmOutside(cp), ppm);
  });

  it('D09: of Cp 2, off the middle by 1.5 sigma', () => within(ppmOutside(2, 1.5), 3.39767));
});

describe('the mean range of a sample', () => {
  it.each([
    [2, 1.12838],
    [3, 1.69257],
    [4, 2.05875],
    [5, 2.32593],
  ])('D21: d2 of %d values is that of the standard table', (n, d2) => within(meanRange(n), d2));
});

describe('sums of readings', () => {
  const values = [10.2, 9.9, 10.4, 10.1, 9.7, 10];

  function summed(given: readonly number[]): ReadingSums {
    const sums = new ReadingSums();
    for (const value of given) sums.add(value - 10);
    return sums;
  }

  it('give what the textbook formulas give', () => {
    const found = summed(values).moments(10);
    expect(found.readings).toBe(6);
    expect(found.mean).toBeCloseTo(mean(values), 12);
    expect(found.sdOverall).toBeCloseTo(sampleStandardDeviation(values), 12);
    // The moving ranges are 0.3, 0.5, 0.3, 0.4, 0.3, their mean 0.36; d2 of two is 2 / sqrt(pi).
    expect(found.sdWithin).toBeCloseTo((0.36 * Math.sqrt(Math.PI)) / 2, 12);
  });

  it('give the same of what was added after a copy, with the first step from the reading before', () => {
    const sums = summed([10.2, 9.9]);
    const before = sums.copy();
    for (const value of values.slice(2)) sums.add(value - 10);
    const found = sums.since(before, 10);
    expect(found.readings).toBe(4);
    expect(found.mean).toBeCloseTo(mean(values.slice(2)), 12);
    expect(found.sdOverall).toBeCloseTo(sampleStandardDeviation(values.slice(2)), 12);
    expect(found.sdWithin).toBeCloseTo((0.375 * Math.sqrt(Math.PI)) / 2, 12);
  });

  it('give nothing where they are too few', () => {
    expect(new ReadingSums().moments(10)).toEqual({
      ...{ readings: 0, mean: null, sdWithin: null, sdOverall: null },
    });
    expect(summed([10.2]).moments(10)).toMatchObject({ readings: 1, sdWithin: null, sdOverall: null });
  });
});

describe('capability', () => {
  const moments = { readings: 50, mean: 10.1, sdWithin: 0.1, sdOverall: 0.2 };

  it('sets the room between the limits, and from the mean to the nearer one, in proportion to sigma', () => {
    const { cp, cpk, pp, ppk } = capabilityOf(moments, { lower: 9.4, upper: 10.6 });
    for (const [found, exact] of [
      [cp, 1.2 / 0.6],
      [cpk, 0.5 / 0.3],
      [pp, 1.2 / 1.2],
      [ppk, 0.5 / 0.6],
    ])
      expect(found).toBeCloseTo(exact!, 12);
  });

  it('goes by the one limit there is', () => {
    const { cp, cpk } = capabilityOf(moments, { lower: 9.4, upper: Number.POSITIVE_INFINITY });
    expect(cp).toBeNull();
    expect(cpk).toBeCloseTo(0.7 / 0.3, 12);
  });

  it('has no value without spread or readings', () => {
    const none = { cp: null, cpk: null, pp: null, ppk: null };
    const limits = { lower: 9, upper: 11 };
    expect(capabilityOf({ ...moments, sdWithin: 0, sdOverall: 0 }, limits)).toEqual(none);
    expect(capabilityOf({ readings: 0, mean: null, sdWithin: null, sdOverall: null }, limits)).toEqual(none);
  });
});

describe('the interval of a capability', () => {
  it('of Pp is that by the chi-square distribution', () => {
    // Standard table: the chi-square quantiles of 19 degrees of freedom at 2.5 % and 97.5 % are 8.907 and 32.852.
    const { lower, upper } = capabilityIntervals('pp', 20, 0.95)(2.29);
    within(lower, 2.29 * Math.sqrt(8.907 / 19), 1e-4);
    within(upper, 2.29 * Math.sqrt(32.852 / 19), 1e-4);
    // Montgomery, Introduction to Statistical Quality Control, example in chapter 8: 1.57 to 3.01 (from memory).
    expect([lower.toFixed(2), upper.toFixed(2)]).toEqual(['1.57', '3.01']);
  });

  it('of Ppk is that of Bissell (1990)', () => {
    // Montgomery, chapter 8: an index of 1.33 from 20 readings has an interval of 0.88 to 1.78 (from memory), with
    // 2(n - 1) = 38 under its square.
    const { lower, upper } = capabilityIntervals('ppk', 20, 0.95)(1.33);
    expect([lower.toFixed(2), upper.toFixed(2)]).toEqual(['0.88', '1.78']);
    within(upper - 1.33, 1.959964 * Math.sqrt(1 / 180 + 1.33 ** 2 / 38), 1e-6);
  });

  // What an interval is for: of many samples, the share whose interval holds the true index. The intervals of the k
  // indices are approximations, so they are held to 1.5 percentage points.
  it.each<[Capability, number]>([
    ['cp', 0.008],
    ['pp', 0.005],
    ['cpk', 0.015],
    ['ppk', 0.015],
  ])('of %s holds the true value about as often as it says', (index, slack) => {
    const limits = { lower: -3.5, upper: 4.5 };
    const exact = { cp: 8 / 6, pp: 8 / 6, cpk: 3.5 / 3, ppk: 3.5 / 3 }[index];
    const next = normals(3);
    const interval = capabilityIntervals(index, 100, 0.9);
    const samples = 20_000;
    let held = 0;
    for (let k = 0; k < samples; k++) {
      const sums = new ReadingSums();
      for (let i = 0; i < 100; i++) sums.add(next());
      const { lower, upper } = interval(capabilityOf(sums.moments(0), limits)[index]!);
      if (lower <= exact && exact <= upper) held++;
    }
    // Three and a half standard errors of the share besides.
    const error = Math.sqrt((0.9 * 0.1) / samples);
    expect(Math.abs(held / samples - 0.9)).toBeLessThan(slack + 3.5 * error);
  });

  it('takes the spread of the mean moving range from theory, .826 / n: Cryer and Ryan (1990), from memory', () => {
    // The interval of Cp comes from it: compared by its effect on the mean of squares.
    const next = normals(4);
    const n = 200;
    const squares = Array.from({ length: 6000 }, () => {
      const sums = new ReadingSums();
      for (let i = 0; i < n; i++) sums.add(next());
      return (sums.moments(0).sdWithin! - 1) ** 2;
    });
    expectMean(squares, 0.826 / (n - 1), 0.05);
  });
});
