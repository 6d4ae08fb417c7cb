import { describe, expect, it } from 'vitest';
import { mser } from '../../../src/statistics/warm-up/mser.ts';
import { normals } from '../normals.ts';
import { expectPrinted } from '../printed.ts';

// O17: after White (1997).
const READINGS = [
  1.2, 2.9, 3.8, 4.1, 5.9, 6, 7.3, 7.1, 8.4, 8.2, 9.6, 8.8, 9.1, 10.4, 9.7, 10.1, 9.3, 10.6, 9.9, 10.2, 9.5,
  10.3, 10.8, 9.4, 9.9, 10.5, 9.6, 10.1, 10, 9.8, 10.4, 9.2, 10.3, 9.9, 10.7, 9.6, 10, 10.2, 9.8, 10.1, 9.7,
  10.5, 9.9, 10, 10.3, 9.6, 10.4, 9.8, 10.1, 9.9,
];

describe('MSER-5', () => {
  it('cuts off what the worked example does', () => {
    const found = mser(READINGS);
    expect(found).toMatchObject({ batches: 3, drop: 15, late: false });
    expectPrinted(found.mean, 10.0114);
    // Printed with six decimals.
    for (const [d, criterion] of [0.393556, 0.074232, 0.003638, 0.000438, 0.000594, 0.000813].entries())
      expect(Math.abs(found.criteria[d]! - criterion)).toBeLessThan(5.1e-7);
  });

  it('does not use readings left over', () => {
    expect(mser([...READINGS, 1000, 1000, 1000])).toEqual(mser(READINGS));
  });

  it('keeps all of a series that is level', () => {
    expect(mser(Array.from({ length: 40 }, () => 7))).toMatchObject({ drop: 0, mean: 7, late: false });
  });

  it('says when a series still rises at its end', () => {
    expect(mser(Array.from({ length: 100 }, (_, i) => i)).late).toBe(true);
  });

  it('finds a step in noise', () => {
    const draw = normals(51);
    const { drop, late } = mser(Array.from({ length: 1000 }, (_, i) => (i < 100 ? 20 : 0) + draw()));
    expect(late).toBe(false);
    expect(drop).toBeGreaterThanOrEqual(100);
    expect(drop).toBeLessThan(300);
  });

  it('needs two batches', () => {
    expect(() => mser([1, 2, 3, 4, 5, 6, 7, 8, 9])).toThrow(RangeError);
  });
});
