import type { Estimate } from '../../statistics/estimate.ts';
import { meanInterval } from '../../statistics/mean-interval.ts';
import { besides, type Point } from '../../statistics/search/lattice.ts';
import type { Space } from './space.ts';
import type { Target } from './target.ts';
import type { Trials } from './trials.ts';

/** One size a step up or down, the others staying. */
export interface Step {
  readonly point: Point;
  /** Which size, by number. */
  readonly size: number;
  readonly up: boolean;
  /** What it adds to the cost; below 0 for a step down. */
  readonly cost: number;
  /** By target: what the step does to the mean, paired by seed. All of a closer look hold together. */
  readonly changes: readonly Estimate[];
}

/** The chosen sizes and those a step off. */
export interface CloserLook {
  readonly runs: number;
  /** Whether these are runs that nothing was chosen by; else they are the first runs, by which sizes were looked for. */
  readonly fresh: boolean;
  /** By target, the mean at the choice with a two-sided interval that has the bound asked for at one end. */
  readonly means: readonly Estimate[];
  readonly steps: readonly Step[];
}

interface Looking {
  readonly space: Space;
  readonly targets: readonly Target[];
  readonly trials: Trials;
  readonly sure: number;
}

interface Seeds {
  readonly from: number;
  readonly runs: number;
  readonly fresh: boolean;
}

const paired = (one: readonly number[], other: readonly number[]) => one.map((x, i) => x - other[i]!);

/** By runs that are there; steps without them, or without a value, are left out. Null where the choice itself has none, or no value. */
function closerLook(
  chosen: Point,
  { space, targets, trials, sure }: Looking,
  { from, runs, fresh }: Seeds,
): CloserLook | null {
  const to = from + runs - 1;
  const valuesOf = (point: Point, target: number) => trials.valuesOf(point, target, from, to);
  const has = (point: Point) =>
    trials.has(point, from, to) && targets.every((_, i) => !valuesOf(point, i).some(Number.isNaN));
  if (!has(chosen)) return null;
  const points = besides(chosen, space.counts).filter(has);
  const steps = points.map((point): Step => {
    const size = point.findIndex((x, d) => x !== chosen[d]);
    const changes = targets.map((_, i) =>
      meanInterval(paired(valuesOf(point, i), valuesOf(chosen, i)), sure, points.length * targets.length),
    );
    const cost = Number((space.costOf(point) - space.costOf(chosen)).toPrecision(12));
    return { point, size, up: point[size]! > chosen[size]!, cost, changes };
  });
  // One end of a two-sided interval at 2 p - 1 is a bound at p.
  const means = targets.map((_, i) => meanInterval(valuesOf(chosen, i), 2 * sure - 1, targets.length));
  return { runs, fresh, means, steps };
}

/**
 * Runs the choice and those a step off under seeds that nothing was chosen by; null where a run of the choice gives no value.
 * @throws SpentError
 */
export async function lookCloser(
  chosen: Point,
  looking: Looking,
  seeds: Omit<Seeds, 'fresh'>,
): Promise<CloserLook | null> {
  const { from, runs } = seeds;
  const points = [chosen, ...besides(chosen, looking.space.counts)];
  await looking.trials.need(points, from, from + runs - 1);
  return closerLook(chosen, looking, { ...seeds, fresh: true });
}

/** By the first runs alone; null where the point has none, or no value. */
export const lookedAt = (chosen: Point, looking: Looking, first: number): CloserLook | null =>
  closerLook(chosen, looking, { from: 1, runs: first, fresh: false });
