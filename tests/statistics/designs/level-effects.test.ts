import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fullFactorial } from '../../../src/statistics/designs/full-factorial.ts';
import { levelEffects } from '../../../src/statistics/designs/level-effects.ts';
import { meanInterval } from '../../../src/statistics/mean-interval.ts';

describe('effects of levels', () => {
  // By hand: rows 1 3 5 and 2 6 10; mean 4.5, rows 3 and 6, columns 1.5, 4.5, 7.5.
  it('of a table of two rows and three columns are as by hand', () => {
    const found = levelEffects(fullFactorial([2, 3]), [[1], [3], [5], [2], [6], [10]], 0.95);
    expect(found.map(({ effect }) => effect.value)).toEqual([-1.5, 1.5, -3, 0, 3, 1, 0, -1, -1, 0, 1]);
    expect(found[5]!.at).toEqual([
      { factor: 0, level: 0 },
      { factor: 1, level: 0 },
    ]);
  });

  it('add up to nothing over the levels of a factor, and to the cells with two factors', () => {
    fc.assert(
      fc.property(
        fc.tuple(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 2, max: 4 })),
        fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: 16, maxLength: 16 }),
        ([rows, columns], numbers) => {
          const points = fullFactorial([rows, columns]);
          const values = points.map((_, i) => [numbers[i]!]);
          const found = levelEffects(points, values, 0.95);
          const of = (factor: number) =>
            found.filter(({ at }) => at.length === 1 && at[0]!.factor === factor);
          for (const factor of [0, 1])
            expect(of(factor).reduce((sum, { effect }) => sum + effect.value, 0)).toBeCloseTo(0, 9);
          const all = values.reduce((sum, [x]) => sum + x!, 0) / values.length;
          for (const [i, [row, column]] of points.entries()) {
            const joint = found.find(
              ({ at }) => at.length === 2 && at[0]!.level === row && at[1]!.level === column,
            )!;
            const sum = all + of(0)[row!]!.effect.value + of(1)[column!]!.effect.value + joint.effect.value;
            expect(sum).toBeCloseTo(values[i]![0]!, 9);
          }
        },
      ),
    );
  });

  it('have the t interval over seeds, from which luck in common falls out', () => {
    const points = fullFactorial([2]);
    const [low, high] = [
      [1, 12, 23],
      [4, 16, 28],
    ];
    const found = levelEffects(points, [low!, high!], 0.95);
    const plain = meanInterval(
      low!.map((x, seed) => (high![seed]! - x) / 2),
      0.95,
    );
    expect(found[1]!.effect.lower).toBeCloseTo(plain.lower!, 9);
    expect(found[1]!.effect.upper).toBeCloseTo(plain.upper!, 9);
  });

  it('without every combination are refused', () => {
    expect(() =>
      levelEffects(
        [
          [0, 0],
          [0, 1],
          [1, 0],
        ],
        [[1], [2], [3]],
        0.95,
      ),
    ).toThrow(RangeError);
    expect(() => levelEffects([[0], [1]], [[1], []], 0.95)).toThrow(RangeError);
  });
});
