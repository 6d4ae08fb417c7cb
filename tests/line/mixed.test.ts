import { describe, expect, it } from 'vitest';
import { MixedDraws, MixedLots } from '../../src/line/mixed.ts';

/** Draws these in turn. */
const given = (values: readonly number[]) => {
  let at = 0;
  return () => values[at++]!;
};

describe('mixed draws', () => {
  it('are their own where nothing is mixed', () => {
    const plain = new MixedDraws(0.5, given([2, -4]));
    expect([plain.draw(), plain.draw()]).toEqual([1, -2]);
  });

  it('are the weighted sum with the draw of the other for the same piece', () => {
    const one = new MixedDraws(1, given([1, 2, 3]));
    const other = new MixedDraws(10, given([5, 0, -5]));
    other.madeOf([
      { draw: one, weight: 0.6 },
      { draw: other, weight: 0.8 },
    ]);
    const pairs = [1, 2, 3].map(() => [one.draw(), other.draw()]);
    // 10 (0.6 x 1 + 0.8 x 5) and so on.
    for (const [i, [a, b]] of [
      [1, 46],
      [2, 12],
      [3, -22],
    ].entries()) {
      expect(pairs[i]![0]).toBe(a);
      expect(pairs[i]![1]).toBeCloseTo(b!, 12);
    }
  });
});

describe('mixed lots', () => {
  it('go by the number of the lot, whichever is asked for first', () => {
    const one = new MixedLots(1, given([1, 2, 3]));
    const other = new MixedLots(10, given([5, 0, -5]));
    other.madeOf([
      { draw: one, weight: 0.6 },
      { draw: other, weight: 0.8 },
    ]);
    expect(other.of(2)).toBeCloseTo(-22, 12);
    expect(one.of(1)).toBe(2);
    expect(other.of(0)).toBeCloseTo(46, 12);
    expect(other.of(1)).toBeCloseTo(12, 12);
  });
});
