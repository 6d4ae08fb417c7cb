import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../src/kernel/normal-quantile.ts';
import { normalPoint, normalShare, shareBetween } from '../../src/statistics/normal.ts';

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
});
