import { describe, expect, it } from 'vitest';
import { normalNodes } from '../../src/statistics/normal-nodes.ts';

describe('points for normal variables', () => {
  // Moments of the standard normal law: 1, 0, 1, 3 of orders 0, 1, 2, 4 (any text).
  it.each([1, 2, 3])('of %d have the moments of the law', (n) => {
    const nodes = normalNodes(n);
    const moment = (of: (z: readonly number[]) => number) =>
      nodes.reduce((sum, { share, z }) => sum + share * of(z), 0);
    expect(moment(() => 1)).toBeCloseTo(1, 10);
    for (let i = 0; i < n; i++) {
      expect(moment((z) => z[i]!)).toBeCloseTo(0, 10);
      expect(moment((z) => z[i]! ** 2)).toBeCloseTo(1, 5);
      expect(moment((z) => z[i]! ** 4)).toBeCloseTo(3, 4);
    }
    if (n > 1) {
      expect(moment((z) => z[0]! * z[1]!)).toBeCloseTo(0, 10);
      expect(moment((z) => z[0]! ** 2 * z[1]! ** 2)).toBeCloseTo(1, 5);
    }
  });

  it('of more have them nearly', () => {
    const nodes = normalNodes(5);
    const moment = (of: (z: readonly number[]) => number) =>
      nodes.reduce((sum, { share, z }) => sum + share * of(z), 0);
    expect(moment(() => 1)).toBeCloseTo(1, 10);
    expect(Math.abs(moment((z) => z[4]!))).toBeLessThan(0.01);
    expect(Math.abs(moment((z) => z[3]! ** 2) - 1)).toBeLessThan(0.01);
    expect(Math.abs(moment((z) => z[0]! * z[1]!))).toBeLessThan(0.01);
    expect(Math.abs(moment((z) => z[2]! ** 2 * z[4]! ** 2) - 1)).toBeLessThan(0.03);
  });

  it('of none are one', () => {
    expect(normalNodes(0)).toEqual([{ share: 1, z: [] }]);
    expect(() => normalNodes(13)).toThrow(RangeError);
  });
});
