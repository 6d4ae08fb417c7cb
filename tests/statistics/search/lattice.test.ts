import { describe, expect, it } from 'vitest';
import { Streams } from '../../../src/kernel/streams.ts';
import { allPoints, besides, keyOf, neighbours, pointsIn } from '../../../src/statistics/search/lattice.ts';
import { nearerTo, walked } from '../../../src/statistics/search/promising.ts';

describe('a lattice', () => {
  it('has so many points, each once', () => {
    const all = allPoints([2, 3, 4]);
    expect(pointsIn([2, 3, 4])).toBe(24);
    expect(new Set(all.map(keyOf)).size).toBe(24);
    expect(all[1]).toEqual([0, 0, 1]);
    expect(pointsIn(Array.from({ length: 7 }, () => 10))).toBe(1e7);
  });

  it('has 2 d points beside each within, and those off along two sides besides', () => {
    expect(besides([1, 1, 1], [3, 3, 3])).toHaveLength(6);
    expect(besides([0, 2], [3, 3])).toEqual([
      [1, 2],
      [0, 1],
    ]);
    const near = neighbours([1, 1, 1], [3, 3, 3]);
    expect(new Set(near.map(keyOf)).size).toBe(6 + 12);
    // Counted anew: all that differ by at most one along one side or two.
    const counted = allPoints([3, 3, 3]).filter((point) => {
      const off = point.filter((x) => x !== 1).length;
      return off === 1 || off === 2;
    });
    expect(near.map(keyOf).sort()).toEqual(counted.map(keyOf).sort());
  });
});

describe('a walk in the area nearer to the best', () => {
  it('stays within bounds and comes to every point there', () => {
    const counts = [9, 9];
    const best = [4, 4];
    const others = [
      [0, 4],
      [8, 8],
      [4, 1],
    ];
    const cheap = { factors: [1, 2], limit: 12 };
    const bounds = [...others.map((other) => nearerTo(best, other)), cheap];
    const squared = (a: readonly number[], b: readonly number[]) =>
      a.reduce((sum, x, d) => sum + (x - b[d]!) ** 2, 0);
    const within = allPoints(counts).filter(
      (point) =>
        others.every((other) => squared(point, best) <= squared(point, other)) &&
        point[0]! + 2 * point[1]! <= 12,
    );
    const uniform = new Streams(5).of('walks');
    const seen = new Set(Array.from({ length: 600 }, () => keyOf(walked(best, counts, bounds, uniform))));
    expect([...seen].sort()).toEqual(within.map(keyOf).sort());
  });
});
