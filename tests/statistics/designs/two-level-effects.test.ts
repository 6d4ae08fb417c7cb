import { describe, expect, it } from 'vitest';
import { grandMean, twoLevelEffects } from '../../../src/statistics/designs/two-level-effects.ts';
import { twoLevelFraction } from '../../../src/statistics/designs/two-level-fraction.ts';
import { normals } from '../normals.ts';
import { chanceError } from '../printed.ts';

describe('effects of factors at two levels', () => {
  // A pilot plant, temperature, concentration and catalyst: G. E. P. Box, W. G. Hunter and J. S. Hunter, Statistics for
  // Experimenters, chapter 10 (data and effects from memory).
  it('are the published ones', () => {
    const yields = [60, 72, 54, 68, 52, 83, 45, 80];
    const found = twoLevelEffects(
      twoLevelFraction(3).points,
      yields.map((value) => [value]),
      0.95,
    );
    expect(found.map(({ factors, effect }) => [factors.join(), effect.value])).toEqual([
      ['0', 23],
      ['1', -5],
      ['2', 1.5],
      ['0,1', 1.5],
      ['0,2', 10],
      ['1,2', 0],
    ]);
    expect(found.every(({ mixedWith, effect }) => mixedWith.length === 0 && effect.lower === null)).toBe(
      true,
    );
    expect(
      grandMean(
        yields.map((value) => [value]),
        0.95,
      ).value,
    ).toBe(64.25);
  });

  it('of a fraction come with what hides in them', () => {
    const { points } = twoLevelFraction(4, ['D=ABC']);
    // AB = CD, AC = BD, AD = BC.
    const found = twoLevelEffects(
      points,
      points.map(([a, b, c, d]) => [10 + a! + 2 * a! * b! + 0.5 * c! * d!]),
      0.95,
    );
    const interactions = found.filter(({ factors }) => factors.length === 2);
    expect(interactions.map(({ factors, mixedWith }) => [factors, mixedWith[0]])).toEqual([
      [[0, 1], { factors: [2, 3], sign: 1 }],
      [[0, 2], { factors: [1, 3], sign: 1 }],
      [[0, 3], { factors: [1, 2], sign: 1 }],
    ]);
    expect(found[0]!.effect.value).toBe(2);
    expect(interactions.map(({ effect }) => effect.value)).toEqual([5, 0, 0]);
  });

  it('of the other half are mixed with the opposite sign', () => {
    const { points } = twoLevelFraction(3, ['C=-AB']);
    const found = twoLevelEffects(
      points,
      points.map(([a, b]) => [a! * b!]),
      0.95,
    );
    expect(found).toHaveLength(3);
    expect(found[2]).toMatchObject({
      factors: [2],
      mixedWith: [{ factors: [0, 1], sign: -1 }],
      effect: { value: -2 },
    });
  });

  it('have intervals that hold together, whatever luck the points share', () => {
    const draw = normals(81);
    const { points } = twoLevelFraction(3);
    const exact = [4, 0, -2, 1, 0, 0];
    const tries = 1500;
    let held = 0;
    for (let i = 0; i < tries; i++) {
      const luck = Array.from({ length: 6 }, () => 10 * draw());
      const values = points.map(([a, b, c]) =>
        luck.map((shared) => 50 + 2 * a! - c! + 0.5 * a! * b! + shared + draw()),
      );
      const found = twoLevelEffects(points, values, 0.9);
      if (found.every(({ effect }, k) => effect.lower! <= exact[k]! && exact[k]! <= effect.upper!)) held++;
    }
    // Independent here, so not much above what Bonferroni's inequality promises: (1 - .1/6)^6 = .904.
    expect(Math.abs(held / tries - 0.904)).toBeLessThan(chanceError(0.904, tries));
  });

  it('of points that are not balanced, or without values, are refused', () => {
    expect(() => twoLevelEffects([[1], [1]], [[1], [2]], 0.95)).toThrow(RangeError);
    expect(() => twoLevelEffects([[-1], [1]], [[1]], 0.95)).toThrow(RangeError);
    expect(() => twoLevelEffects([[-1], [1]], [[1], []], 0.95)).toThrow(RangeError);
  });
});
