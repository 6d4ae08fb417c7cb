import type { Range } from './box-probability.ts';

/** A dimension within limits, and how often and with which sign it counts in a sum. */
interface Link {
  readonly factor: number;
  readonly limits: Range;
}

/** What a sum of dimensions comes to: at worst, and with the root of the sum of squares of the half tolerances. */
export interface Stack {
  readonly worst: Range;
  readonly rootSumSquare: Range;
}

/** Both ways of adding tolerances up are common practice; e.g. P. J. Drake, Dimensioning and Tolerancing Handbook (from memory). */
export function toleranceStack(links: readonly Link[]): Stack {
  let [middle, worst, squares] = [0, 0, 0];
  for (const { factor, limits } of links) {
    const half = (factor * (limits.upper - limits.lower)) / 2;
    middle += (factor * (limits.upper + limits.lower)) / 2;
    worst += Math.abs(half);
    squares += half ** 2;
  }
  const about = (by: number): Range => ({ lower: middle - by, upper: middle + by });
  return { worst: about(worst), rootSumSquare: about(Math.sqrt(squares)) };
}
