import { describe, expect, it } from 'vitest';
import { Streams } from '../../../src/kernel/streams.ts';
import { elementaryEffects, trajectories } from '../../../src/statistics/designs/elementary-effects.ts';

const uniform = () => new Streams(9).of('design');

describe('trajectories of elementary effects', () => {
  // Morris (1991): each step changes one factor by levels / (2 (levels - 1)), on the grid of so many levels.
  it.each([2, 4, 8])('change one factor after the other over %d levels', (levels) => {
    for (const { points, order } of trajectories(5, 40, levels, uniform())) {
      expect([...order].sort()).toEqual([0, 1, 2, 3, 4]);
      expect(points).toHaveLength(6);
      for (const x of points.flat()) {
        expect(x * (levels - 1)).toBeCloseTo(Math.round(x * (levels - 1)), 9);
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(1);
      }
      for (const [step, factor] of order.entries()) {
        const moved = points[step + 1]!.map((x, i) => x - points[step]![i]!);
        for (const [i, by] of moved.entries())
          expect(Math.abs(by)).toBeCloseTo(i === factor ? levels / (2 * (levels - 1)) : 0, 9);
      }
    }
  });

  it('meet all levels about equally often', () => {
    const counts = [0, 0, 0, 0];
    const count = 2000;
    for (const { points } of trajectories(3, count, 4, uniform()))
      for (const x of [points[0]![1]!]) counts[Math.round(3 * x)]!++;
    const error = 3.5 * Math.sqrt(count * 0.25 * 0.75);
    for (const found of counts) expect(Math.abs(found - count / 4)).toBeLessThan(error);
  });

  it('over an odd number of levels are refused', () => {
    expect(() => trajectories(3, 2, 5, uniform())).toThrow(RangeError);
  });
});

describe('elementary effects', () => {
  const screen = (y: (x: readonly number[]) => number, factors: number, count: number) => {
    const ways = trajectories(factors, count, 4, uniform());
    return elementaryEffects(
      ways,
      ways.map(({ points }) => points.map(y)),
      0.95,
    );
  };

  it('of a function that is linear are its factors, without spread', () => {
    const found = screen(([a, b, c]) => 3 * a! - 2 * b! + 0 * c!, 3, 10);
    for (const [i, factor] of [3, -2, 0].entries()) {
      expect(found[i]!.mean.value).toBeCloseTo(factor, 9);
      expect(found[i]!.size.value).toBeCloseTo(Math.abs(factor), 9);
      expect(found[i]!.spread).toBeCloseTo(0, 9);
    }
  });

  // For y = a + a b the effect of a is 1 + b: mean 1.5 and, b being one of 0, 1/3, 2/3, 1 with equal chance, variance 5/36. For (b - 1/2)^2
  // steps of 2/3 give b + b' - 1 with b, b' a step apart: +-1/3 with equal chance, so mean 0 and size 1/3.
  it('tell interactions and bent effects by their spread', () => {
    const count = 1000;
    const found = screen(([a, b, c]) => a! + a! * b! + (c! - 0.5) ** 2, 3, count);
    const sd = Math.sqrt(5 / 36);
    expect(Math.abs(found[0]!.mean.value - 1.5)).toBeLessThan((3.5 * sd) / Math.sqrt(count));
    expect(Math.abs(found[0]!.spread! / sd - 1)).toBeLessThan(3.5 / Math.sqrt(2 * count));
    expect(found[2]!.size.value).toBeCloseTo(1 / 3, 9);
    expect(Math.abs(found[2]!.mean.value)).toBeLessThan((3.5 / 3) * Math.sqrt(1 / count));
  });

  it('of one trajectory have no interval', () => {
    const [found] = screen(([a]) => a!, 1, 1);
    expect(found).toMatchObject({ mean: { lower: null }, size: { lower: null }, spread: null });
  });

  it('without all values are refused', () => {
    expect(() => elementaryEffects(trajectories(2, 2, 4, uniform()), [[1, 2, 3]], 0.95)).toThrow(RangeError);
  });
});
