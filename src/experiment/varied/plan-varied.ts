import type { Outcome } from '../../line/outcome.ts';
import type { Change } from '../../scenario/changed.ts';
import type { Task } from '../worker.ts';
import type { Design } from './design.ts';
import type { Factor, Point } from './factor.ts';

/** One run, as a point sees it. */
export interface VariedRun {
  /** Its number from 0. */
  readonly point: number;
  readonly outcome: Outcome;
}

/** A run that is planned. */
interface PlannedRun {
  readonly point: number;
  readonly task: Task;
}

/** What the scenario has at a point instead of what is written. */
export const changesAt = (factors: readonly Factor[], point: Point): Change[] =>
  factors.flatMap(({ at }, i) => (at === null ? [] : [{ at, is: point[i]!.is }]));

/**
 * Every point under the same seeds, 1 to `seeds`, seed by seed. Of screening each path has so many seeds of its own, the same at
 * all its points, so that the paths are independent.
 * @param policy what is followed where the policy is not varied
 */
export function planVaried(
  factors: readonly Factor[],
  { points, perPath }: Design,
  seeds: number,
  policy: string,
): PlannedRun[] {
  const followed = factors.findIndex(({ at }) => at === null);
  const variants = points.map((point) => ({ disturbed: true, changes: changesAt(factors, point) }));
  return Array.from({ length: points.length / perPath }, (_, path) =>
    Array.from({ length: seeds }, (_, i) =>
      Array.from({ length: perPath }, (_, step) => {
        const point = path * perPath + step;
        const own = followed < 0 ? policy : points[point]![followed]!.words;
        return { point, task: { policy: own, seed: path * seeds + i + 1, variant: variants[point]! } };
      }),
    ).flat(),
  ).flat();
}
