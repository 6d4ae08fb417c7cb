import jstat from 'jstat';
import { cumulativeStdNormalProbability, probit } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../src/kernel/normal-quantile.ts';
import {
  normalDensity,
  normalPoint,
  normalShare,
  shareBelow,
  shareBetween,
} from '../../src/statistics/normal.ts';

describe('the normal law', () => {
  // M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, table 26.1.
  it.each([
    [-3, 0.001349898],
    [-1, 0.1586552539],
    [0, 0.5],
    [0.1, 0.5398278373],
    [2, 0.9772498681],
  ])('holds at or below %d the tabulated share', (z, share) => {
    expect(normalShare(z)).toBeCloseTo(share, 9);
  });

  it('a share below leaves out a law without spread at just that value', () => {
    expect(shareBelow(5, 3, 2)).toBeCloseTo(0.8413447461, 9);
    expect([4, 5, 6].map((mean) => shareBelow(5, mean, 0))).toEqual([1, 0, 0]);
  });

  it('ends at infinity', () => {
    expect(normalShare(Number.POSITIVE_INFINITY)).toBe(1);
    expect(normalShare(Number.NEGATIVE_INFINITY)).toBe(0);
  });

  // Two independent ways: a general library, and algorithm AS 241.
  it('has the points of Wichura', () => {
    for (let i = 1; i < 1000; i++)
      expect(Math.abs(normalPoint(i / 1000) - normalQuantile(i / 1000))).toBeLessThan(1e-10);
    for (const p of [1e-5, 1e-8]) expect(normalPoint(p) / normalQuantile(p)).toBeCloseTo(1, 6);
  });

  // 0.6826895 and 0.0013499 - 0.0000317 (same table).
  it('holds between two values what the table says, also far out on either side', () => {
    expect(shareBetween(9, 11, 10, 1)).toBeCloseTo(0.6826895, 7);
    expect(shareBetween(3, 4, 0, 1)).toBeCloseTo(0.0013182, 7);
    expect(shareBetween(3, 4, 0, 1)).toBe(shareBetween(-4, -3, 0, 1));
    expect(shareBetween(5, 6, 5, 0)).toBe(1);
    expect(shareBetween(5.1, 6, 5, 0)).toBe(0);
  });

  it.each([
    // Standard table.
    [0.9, 1.281552],
    [0.95, 1.644854],
    [0.975, 1.959964],
    [0.995, 2.575829],
    [0.9995, 3.290527],
  ])('has the quantile at %d of the standard table, as both libraries and the draws do', (p, z) => {
    for (const found of [normalPoint(p), normalQuantile(p)]) expect(found).toBeCloseTo(z, 6);
    // The other library's is an approximation, to half a percent.
    expect(Math.abs(probit(p) / z - 1)).toBeLessThan(0.005);
    expect(normalShare(normalPoint(p))).toBeCloseTo(p, 12);
    expect(normalPoint(1 - p)).toBeCloseTo(-z, 6);
  });

  it('has the chances that the second library has, to the digits of its table', () => {
    for (let z = -3; z <= 3; z += 0.25) {
      expect(Math.abs(normalShare(z) - cumulativeStdNormalProbability(z))).toBeLessThan(1e-4);
    }
  });

  it('keeps its digits far out: 1 - F(6) = 9.865876450e-10', () => {
    expect(Math.abs(normalShare(-6) / 9.86587645e-10 - 1)).toBeLessThan(1e-8);
  });

  it('has a density that its chances grow by', () => {
    const step = 1e-4;
    for (const z of [-2, 0, 1.3])
      expect((normalShare(z + step) - normalShare(z - step)) / (2 * step)).toBeCloseTo(normalDensity(z), 7);
  });

  it('stands beside chi-square quantiles of the standard table', () => {
    const { inv } = jstat.jStat.chisquare;
    expect(inv(0.95, 10)).toBeCloseTo(18.307, 3);
    expect(inv(0.05, 10)).toBeCloseTo(3.94, 3);
    expect(inv(0.975, 30)).toBeCloseTo(46.979, 3);
  });
});
