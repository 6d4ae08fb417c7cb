import { describe, expect, it } from 'vitest';
import type { Feature } from '../../src/line/features.ts';
import type { Pair } from '../../src/line/fit.ts';
import { PartTable } from '../../src/line/part-table.ts';
import { highestRank, rankOf } from '../../src/line/ranks.ts';

/** Two pairs: a shaft of 10 mm in the mate's hole of 10.3 mm, and a hole of 6 mm over the mate's shaft of 5.7 mm. */
function bench(readings: readonly (readonly [number, number])[], known = true) {
  const parts = new PartTable();
  const feature = (aim: number) =>
    ({ reading: parts.column(Number.NaN), spec: { aim } }) as unknown as Feature;
  const limits = { least: 0.1, most: 0.5 };
  const pairs: Pair[] = [
    { feature: feature(10), mate: 0, mateAim: 10.3, partIsHole: false, ...limits },
    { feature: feature(6), mate: 1, mateAim: 5.7, partIsHole: true, ...limits },
  ];
  const rows = readings.map((pair) => {
    const row = parts.start(0);
    pair.forEach((reading, i) => {
      parts.set(row, pairs[i]!.feature.reading, reading);
    });
    return row;
  });
  return { rows, readings: { parts, pairs, known: () => known } };
}
const how = { do: 'match', at: 'assembly', mateRepeatability: 0, takes: 0, patience: 0 } as const;
const aims = new Float64Array([10.3, 5.7]);

describe('a rank by margin', () => {
  // The worst pairs' margins to mates as designed: 0.2, 0.1 (a clearance of 0.2) and -0.1 mm (of 0.6, and of 0).
  const sizes = [
    [10, 6],
    [10.1, 6],
    [10, 6.3],
    [10.3, 6],
  ] as const;
  it.each([
    ['hardest-fit', [1 / 1.2, 1 / 1.1, -0.15, -0.15]],
    ['best-margin', [0.15, 0.05, -0.15, -0.15]],
    ['first-fit', [0, 0, -0.15, -0.15]],
  ] as const)('%s: the worst pair decides, and what promises the guard is not negative', (rule, expected) => {
    const { rows, readings } = bench(sizes);
    const rank = rankOf({ ...how, rule, guard: 0.05 }, readings);
    for (const [i, row] of rows.entries()) expect(rank(row, aims)).toBeCloseTo(expected[i]!, 12);
  });

  it('takes a part without a reading, or whose mark cannot be read, to be as designed', () => {
    const spec = { ...how, rule: 'best-margin', guard: 0 } as const;
    const unread = bench([[Number.NaN, 6]]);
    expect(rankOf(spec, unread.readings)(unread.rows[0]!, aims)).toBeCloseTo(0.2, 12);
    const unknown = bench([[10.3, 6]], false);
    expect(rankOf(spec, unknown.readings)(unknown.rows[0]!, aims)).toBeCloseTo(0.2, 12);
  });
});

it('is highest at once where any part that promises to fit is as good as another', () => {
  const of = (rule: 'first-fit' | 'best-margin' | 'hardest-fit' | 'classes') => highestRank({ ...how, rule });
  expect([of('first-fit'), of('classes')]).toEqual([0, 0]);
  expect([of('best-margin'), of('hardest-fit')]).toEqual([
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
  ]);
});

describe('a rank by classes', () => {
  const rank = (number: number, part: readonly [number, number], mates: readonly [number, number]) => {
    const { rows, readings } = bench([part]);
    const classes = { number, width: 0.1 };
    return rankOf({ ...how, rule: 'classes', classes }, readings)(rows[0]!, new Float64Array(mates));
  };

  it.each<[string, number, readonly [number, number], readonly [number, number], number]>([
    ['all as designed: one class', 3, [10, 6], [10.3, 5.7], 0],
    // Three classes of 0.1 mm: the middle one within 0.05 mm of the aim.
    ['just within the middle class', 3, [10.049, 6], [10.251, 5.7], 0],
    ['a large shaft asks for a large hole', 3, [10.06, 6], [10.3, 5.7], -1],
    ['and gets it', 3, [10.06, 6], [10.36, 5.7], 0],
    ['small against large', 3, [9.9, 6], [10.4, 5.7], -2],
    ['the outermost take all beyond', 3, [10.06, 6], [12, 5.7], 0],
    ['the distances of all pairs add up', 3, [9.9, 6.1], [10.4, 5.7], -3],
    ['an even number has a border at the aim', 2, [10.001, 6], [10.299, 5.7], -1],
  ])('%s', (_what, number, part, mates, expected) => {
    expect(rank(number, part, mates) + 0).toBe(expected);
  });
});
