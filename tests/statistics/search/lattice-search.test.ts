import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Streams } from '../../../src/kernel/streams.ts';
import { allPoints, keyOf, neighbours, type Point } from '../../../src/statistics/search/lattice.ts';
import { LatticeSearch } from '../../../src/statistics/search/lattice-search.ts';

interface Problem {
  readonly counts: readonly number[];
  readonly costs: readonly number[];
  /** By how much a point misses its target; 0 where it meets it. */
  readonly short: (point: Point) => number;
}

const costOf = (point: Point, costs: readonly number[]) =>
  Number(point.reduce((sum, x, d) => sum + x * costs[d]!, 0).toPrecision(12));

/** Searches where there is no noise. */
function searched({ counts, costs, short }: Problem, seed = 1, most = 10_000) {
  const uniform = new Streams(seed).of('search');
  const search = new LatticeSearch({ counts, costs, batch: 6, most, uniform });
  const visited = new Map<string, Point>();
  for (let points = search.next(); points.length > 0; points = search.next()) {
    for (const point of points) {
      expect(visited.has(keyOf(point))).toBe(false);
      visited.set(keyOf(point), point);
      search.tell(point, short(point));
    }
  }
  return { search, visited };
}

/** What is cheapest of all that meet the target, by looking at all. */
const cheapest = ({ counts, costs, short }: Problem) =>
  Math.min(
    ...allPoints(counts)
      .filter((point) => short(point) === 0)
      .map((point) => costOf(point, costs)),
  );

/** A target that each side helps to reach, the less the more there is of it. */
const saturating = (counts: readonly number[], weights: readonly number[], share: number) => {
  const of = (point: Point) => point.reduce((sum, x, d) => sum + weights[d]! * (1 - 1 / (1 + x)), 0);
  const limit = share * of(counts.map((count) => count - 1));
  return (point: Point) => Math.max(0, limit - of(point));
};

describe('the search of a lattice', () => {
  it('finds what looking at all finds, in a fraction of the visits', () => {
    const counts = [15, 15, 4];
    const problem = { counts, costs: [3, 5, 40], short: saturating(counts, [10, 8, 6], 0.8) };
    const { search, visited } = searched(problem);
    expect(costOf(search.best!, problem.costs)).toBe(cheapest(problem));
    expect(visited.size).toBeLessThan(allPoints(counts).length / 5);
  });

  it('ends where no cheaper neighbour meets the target, whatever the target', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 })), { minLength: 1, maxLength: 4 }), // biome-ignore format: one line reads better
        fc.integer({ min: 0, max: 100 }),
        fc.integer({ min: 1, max: 1000 }),
        (sides, percent, seed) => {
          const counts = sides.map(([count]) => count);
          const costs = sides.map(([, cost]) => cost);
          const short = saturating(
            counts,
            sides.map(([, , weight]) => weight),
            percent / 100,
          );
          const { search, visited } = searched({ counts, costs, short }, seed);
          const best = search.best!;
          expect(search.met).toBe(true);
          expect(short(best)).toBe(0);
          for (const point of neighbours(best, counts)) {
            if (costOf(point, costs) >= costOf(best, costs)) continue;
            expect(visited.has(keyOf(point))).toBe(true);
            expect(short(point)).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('comes to what misses least where nothing meets the target', () => {
    const short = ([x = 0, y = 0]: Point) => 5 + Math.abs(x - 6) + Math.abs(y - 2);
    const { search } = searched({ counts: [12, 12], costs: [1, 1], short });
    expect([search.best, search.met]).toEqual([[6, 2], false]);
  });

  it('looks at no more points than it may, and goes among ten million', () => {
    const counts = Array.from({ length: 7 }, () => 10);
    const short = saturating(counts, [1, 2, 3, 4, 5, 6, 7], 0.7);
    const { visited } = searched({ counts, costs: [7, 6, 5, 4, 3, 2, 1], short }, 1, 50);
    expect(visited.size).toBe(50);
    const { search } = searched({ counts, costs: [7, 6, 5, 4, 3, 2, 1], short }, 1, 3000);
    expect(search.met).toBe(true);
  });

  it('goes the same way again', () => {
    const counts = [9, 9];
    const problem = { counts, costs: [2, 3], short: saturating(counts, [1, 1], 0.6) };
    expect([...searched(problem).visited.keys()]).toEqual([...searched(problem).visited.keys()]);
  });
});
