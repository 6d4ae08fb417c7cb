/** A point of a lattice: along each side a whole number from 0. */
export type Point = readonly number[];

export const keyOf = (point: Point): string => point.join(' ');

/** How many points there are; Infinity beyond what a number holds. */
export const pointsIn = (counts: readonly number[]): number =>
  counts.reduce((product, count) => product * count, 1);

/** All points, the last coordinate changing first. Mind their number. */
export function allPoints(counts: readonly number[]): Point[] {
  return counts.reduce<Point[]>(
    (points, count) => points.flatMap((point) => Array.from({ length: count }, (_, i) => [...point, i])),
    [[]],
  );
}

const inside = (point: Point, counts: readonly number[]) => point.every((x, d) => x >= 0 && x < counts[d]!);

const moved = (point: Point, by: readonly (readonly [number, number])[]): Point =>
  point.map((x, d) => x + by.reduce((sum, [side, step]) => sum + (side === d ? step : 0), 0));

/** Points a step away along one side. */
export const besides = (point: Point, counts: readonly number[]): Point[] =>
  point
    .flatMap((_, d) => [moved(point, [[d, -1]]), moved(point, [[d, 1]])])
    .filter((other) => inside(other, counts));

/** Those, and points a step away along each of two sides. */
export function neighbours(point: Point, counts: readonly number[]): Point[] {
  const two = point.flatMap((_, one) =>
    Array.from({ length: one }, (_, other) => other).flatMap((other) =>
      [-1, 1].flatMap((a) =>
        [-1, 1].map((b) =>
          moved(point, [
            [one, a],
            [other, b],
          ]),
        ),
      ),
    ),
  );
  return [...besides(point, counts), ...two.filter((found) => inside(found, counts))];
}
