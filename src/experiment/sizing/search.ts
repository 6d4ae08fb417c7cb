import { mean, sampleStandardDeviation } from 'simple-statistics';
import { Streams } from '../../kernel/streams.ts';
import { allPoints, besides, keyOf, type Point } from '../../statistics/search/lattice.ts';
import { LatticeSearch } from '../../statistics/search/lattice-search.ts';
import type { Space } from './space.ts';
import { middleOf, type Target } from './target.ts';
import type { Trials } from './trials.ts';

export interface Looked {
  /** Sizes that have their first runs, in the order they got them. */
  readonly points: Point[];
  /** The cheapest that seems to meet its targets by these runs, else the one that seems to miss them least. */
  best: Point | null;
  /** Whether the best seems to meet them. */
  met: boolean;
}

interface Look {
  readonly space: Space;
  readonly targets: readonly Target[];
  readonly trials: Trials;
  /** Runs that each of the sizes gets, under seeds from 1 on. */
  readonly first: number;
  /** The most sizes that a search looks at. */
  readonly most: number;
}

/** Points that a search asks for at a time. */
const BATCH = 6;

/**
 * By how much means fall short of all targets, each in what is worth having; 0 where they seem to be met, by a standard error
 * at least: the first seeds may have been lucky ones for all, and the check can go down from what is enough.
 */
function shortOf(point: Point, { targets, trials, first }: Look): number {
  return targets.reduce((sum, target, i) => {
    const values = trials.valuesOf(point, i, 1, first);
    const error = sampleStandardDeviation(values) / Math.sqrt(first);
    const behind = (target.better === 'higher' ? 1 : -1) * (middleOf(target) - mean(values)) + error;
    return sum + (Number.isNaN(behind) ? Number.POSITIVE_INFINITY : Math.max(0, behind / target.worth));
  }, 0);
}

/** Gives every size its first runs. What was found stands in `looked`, however it ends. */
export async function lookAtAll(look: Look, looked: Looked): Promise<void> {
  const { space, trials, first } = look;
  const points = allPoints(space.counts).sort((a, b) => space.costOf(a) - space.costOf(b));
  let least = Number.POSITIVE_INFINITY;
  // Some at a time, so that what is known stands there when runs or time are over.
  for (let from = 0; from < points.length; from += BATCH) {
    const some = points.slice(from, from + BATCH);
    await trials.need(some, 1, first);
    for (const point of some) {
      const short = shortOf(point, look);
      // In the order of cost, so that the first to meet them is the cheapest.
      if (looked.best === null || short < least) {
        looked.best = point;
        least = short;
      }
      looked.points.push(point);
    }
    looked.met = least === 0;
  }
}

/** Searches; the best and those a step off get their first runs, too. What was found stands in `looked`, however it ends. */
export async function search(look: Look, looked: Looked): Promise<void> {
  const { space, trials, first, most } = look;
  const { counts, stepCosts } = space;
  const searching = new LatticeSearch({
    ...{ counts, costs: stepCosts, batch: BATCH, most },
    uniform: new Streams(1).of('sizes to look at'),
  });
  for (let points = searching.next(); points.length > 0; points = searching.next()) {
    await trials.need(points, 1, first);
    for (const point of points) {
      looked.points.push(point);
      searching.tell(point, shortOf(point, look));
    }
    looked.best = searching.best;
    looked.met = searching.met;
  }
  const known = new Set(looked.points.map(keyOf));
  const around = besides(looked.best!, counts).filter((point) => !known.has(keyOf(point)));
  await trials.need(around, 1, first);
  looked.points.push(...around);
}
