import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leadersOf } from '../../src/statistics/leaders.ts';

describe('leaders', () => {
  it('change where two straight lines cross', () => {
    expect(leadersOf([0, 2], [[10, 0], [0, 10]])).toEqual([{ who: 0, from: 0 }, { who: 1, from: 1 }]); // biome-ignore format: one line reads better
    expect(leadersOf([1, 2, 4], [[5, 5, 5], [4, 4, 6]])).toEqual([{ who: 0, from: 1 }, { who: 1, from: 3 }]); // biome-ignore format: one line reads better
  });

  it('may lead between two levels without leading at any', () => {
    const third = [9, 9];
    const found = leadersOf([0, 1], [[10, 0], [0, 10], third]);
    expect(found.map(({ who }) => who)).toEqual([0, 2, 1]);
    expect(found.map(({ from }) => from)).toEqual([0, expect.closeTo(0.1, 12), expect.closeTo(0.9, 12)]);
  });

  it('lead right after where several are level, and stay while no other is higher', () => {
    expect(
      leadersOf(
        [0, 1],
        [
          [5, 1],
          [5, 3],
        ],
      ),
    ).toEqual([{ who: 1, from: 0 }]);
    expect(leadersOf([0, 1, 2], [[5, 3, 1], [4, 3, 2]])).toEqual([{ who: 0, from: 0 }, { who: 1, from: 1 }]); // biome-ignore format: one line reads better
    expect(
      leadersOf(
        [0, 1, 2],
        [
          [5, 3, 2],
          [4, 3, 1],
        ],
      ),
    ).toEqual([{ who: 0, from: 0 }]);
    expect(
      leadersOf(
        [0, 1, 2],
        [
          [3, 3, 3],
          [3, 3, 3],
        ],
      ),
    ).toEqual([{ who: 0, from: 0 }]);
    // Level only at the end, where there is no way on.
    expect(
      leadersOf(
        [0, 1],
        [
          [5, 3],
          [4, 3],
        ],
      ),
    ).toEqual([{ who: 0, from: 0 }]);
  });

  it('are the highest at one level, too', () => {
    expect(leadersOf([1], [[2], [7], [7]])).toEqual([{ who: 1, from: 1 }]);
  });

  it('are nowhere below another', () => {
    const value = fc.integer({ min: -20, max: 20 });
    const made = fc.array(fc.tuple(value, value, value, value), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(made, (values) => {
        const levels = [0, 0.5, 1, 3];
        const at = (who: number, level: number) => {
          const i = levels.findLastIndex((one, k) => one <= level && k < 3);
          const share = (level - levels[i]!) / (levels[i + 1]! - levels[i]!);
          return values[who]![i]! * (1 - share) + values[who]![i + 1]! * share;
        };
        const found = leadersOf(levels, values);
        for (let level = 0; level <= 3; level += 0.02) {
          const { who } = found.findLast(({ from }) => from <= level)!;
          const highest = Math.max(...values.map((_, other) => at(other, level)));
          expect(at(who, level)).toBeCloseTo(highest, 9);
        }
      }),
      { seed: 6, numRuns: 200 },
    );
  });
});
