import type { Point } from './lattice.ts';

/** sum of factors[d] * point[d] <= limit. */
export interface HalfSpace {
  readonly factors: readonly number[];
  readonly limit: number;
}

/** Points at least as near to `best` as to `other`. */
export const nearerTo = (best: Point, other: Point): HalfSpace => ({
  factors: other.map((y, d) => 2 * (y - best[d]!)),
  limit: other.reduce((sum, y, d) => sum + y ** 2 - best[d]! ** 2, 0),
});

/** Sums of whole numbers and costs may round by so much. */
const ROUNDING = 1e-9;

/** From where to where a coordinate may go while the others stay and every bound holds. */
function range(point: Point, side: number, count: number, bounds: readonly HalfSpace[]): [number, number] {
  let [low, high] = [0, count - 1];
  for (const { factors, limit } of bounds) {
    const own = factors[side]!;
    if (own === 0) continue;
    const others = factors.reduce((sum, factor, d) => (d === side ? sum : sum + factor * point[d]!), 0);
    const end = (limit - others) / own;
    if (own > 0) high = Math.min(high, Math.floor(end + ROUNDING));
    else low = Math.max(low, Math.ceil(end - ROUNDING));
  }
  return [low, high];
}

/**
 * A point of the lattice within bounds, near enough at random: a walk from `start`, which lies within them, that again and
 * again draws one coordinate anew among all the values it may have.
 * @param uniform numbers in [0, 1)
 */
export function walked(
  start: Point,
  counts: readonly number[],
  bounds: readonly HalfSpace[],
  uniform: () => number,
): Point {
  const point = [...start];
  const steps = 5 * counts.length;
  for (let step = 0; step < steps; step++) {
    const side = Math.floor(uniform() * counts.length);
    const [low, high] = range(point, side, counts[side]!, bounds);
    if (high > low) point[side] = low + Math.floor(uniform() * (high - low + 1));
  }
  return point;
}
