import type { Better } from '../../statistics/comparing/better.ts';

/** Those of `points` that no other beats in cost and in the mean of a target, in the order of cost. */
export function frontierOf<Found extends { readonly cost: number; readonly mean: number }>(
  points: readonly Found[],
  better: Better,
): Found[] {
  const sign = better === 'higher' ? 1 : -1;
  const sorted = [...points].sort((a, b) => a.cost - b.cost || sign * (b.mean - a.mean));
  let best = Number.NEGATIVE_INFINITY;
  return sorted.filter(({ mean }) => {
    if (sign * mean <= best) return false;
    best = sign * mean;
    return true;
  });
}
