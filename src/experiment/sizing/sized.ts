import type { Outcome } from '../../line/outcome.ts';
import type { SizeSpec } from '../../scenario/sizings.ts';
import type { Estimate } from '../../statistics/estimate.ts';
import { meanInterval } from '../../statistics/mean-interval.ts';
import { keyOf, type Point } from '../../statistics/search/lattice.ts';
import type { Task } from '../worker.ts';
import type { Word } from './check.ts';
import { frontierOf } from './frontier.ts';
import { type CloserLook, lookCloser, lookedAt } from './look-closer.ts';
import type { Question } from './question.ts';
import { Rounds } from './rounds.ts';
import { type Looked, lookAtAll, search } from './search.ts';
import { Space } from './space.ts';
import type { Target } from './target.ts';
import { type Spent, SpentError, Trials } from './trials.ts';

/** Sizes that were simulated, all together one configuration. */
export interface Configuration {
  readonly point: Point;
  /** By size, what stands at its places. */
  readonly values: readonly (number | string)[];
  readonly cost: number;
  /** By target, over the first runs, which are under the same seeds for all; null where a run gave no value. */
  readonly means: readonly (Estimate | null)[];
  readonly word: Word;
  /** Runs by which the word was found. */
  readonly checkRuns: number;
  /** Whether no other costs no more and has as good a mean of the first target. */
  readonly frontier: boolean;
}

export interface Sized {
  readonly name: string;
  readonly policy: string;
  readonly money: string;
  readonly sizes: readonly SizeSpec[];
  readonly targets: readonly Target[];
  readonly sure: number;
  /** How many configurations there could be. */
  readonly possible: number;
  /** Whether every one of them was looked at. */
  readonly whole: boolean;
  /** Runs that each configuration got at first. */
  readonly first: number;
  /** Runs in all. */
  readonly runs: number;
  /** What ended it before it was done; null where it was done. */
  readonly spent: Spent | null;
  /** In the order of their cost; those whose first runs were done. */
  readonly configurations: readonly Configuration[];
  /** The cheapest that is said to meet the targets; null where none is. */
  readonly chosen: Configuration | null;
  /** Whether all cheaper choices a step off along one size or two were checked; never where nothing is chosen. */
  readonly neighboursChecked: boolean;
  /** What seems best by the first runs, whether it was confirmed or not. */
  readonly apparent: Configuration | null;
  /** Whether it seems to meet the targets, by a standard error at least. */
  readonly apparentMeets: boolean;
  /** At the choice, or at what seems best. */
  readonly look: CloserLook | null;
}

export interface SizingSettings {
  /** Whether every configuration is to be looked at. */
  readonly whole: boolean;
  /** Runs that each configuration gets at first, 2 or more. */
  readonly first: number;
  /** The most configurations that a search looks at. */
  readonly points: number;
  /** Runs in all. */
  readonly atMost: number;
  readonly inTime: () => boolean;
}

/** How many times the first runs the closer look takes. */
const CLOSER = 3;

function configurationsOf(
  space: Space,
  targets: readonly Target[],
  trials: Trials,
  { points }: Looked,
  first: number,
  rounds: Rounds,
): Configuration[] {
  const { said } = rounds;
  const found = points.map((point) => {
    const means = targets.map((_, i) => {
      const values = trials.valuesOf(point, i, 1, first);
      return values.some(Number.isNaN) ? null : meanInterval(values, 0.95);
    });
    const { word = 'not checked', runs = 0 } = said.get(keyOf(point)) ?? {};
    const values = space.valuesOf(point);
    return { point, values, cost: space.costOf(point), means, word, checkRuns: runs };
  });
  const known = found.flatMap((one) => (one.means[0] ? [{ ...one, mean: one.means[0].value }] : []));
  const frontier = new Set(frontierOf(known, targets[0]!.better).map(({ point }) => point));
  return found
    .map((one): Configuration => ({ ...one, frontier: frontier.has(one.point) }))
    .sort((a, b) => a.cost - b.cost);
}

/**
 * Looks for the cheapest sizes that meet the targets, checks what was found, and looks closer at the choice. Runs are asked
 * for in an order that earlier outcomes alone decide.
 */
export async function sized(
  question: Question,
  { whole, first, points, atMost, inTime }: SizingSettings,
  run: (tasks: readonly Task[]) => Promise<Outcome[]>,
): Promise<Sized> {
  const { name, policy, money, sizes, targets, sure } = question;
  const space = new Space(sizes);
  const trials = new Trials({ space, targets, policy, atMost, inTime, run });
  const looked: Looked = { points: [], best: null, met: false };
  const looking = { space, targets, trials, sure };
  const rounds = new Rounds({ ...looking, first }, looked);
  let look: CloserLook | null = null;
  let spent: Spent | null = null;
  try {
    await (whole ? lookAtAll : search)({ space, targets, trials, first, most: points }, looked);
    await rounds.decide(whole);
    const from = rounds.last + 1;
    look = await lookCloser(rounds.chosen ?? looked.best!, looking, { from, runs: CLOSER * first });
  } catch (error) {
    if (!(error instanceof SpentError)) throw error;
    spent = error.by;
  }
  const at = rounds.chosen ?? looked.best;
  const configurations = configurationsOf(space, targets, trials, looked, first, rounds);
  const configurationAt = (point: Point | null | undefined) =>
    configurations.find((one) => one.point === point) ?? null;
  return {
    ...{ name, policy, money, sizes, targets, sure, possible: space.points, whole, first, spent },
    runs: trials.runs,
    configurations,
    chosen: configurationAt(rounds.chosen),
    neighboursChecked: rounds.neighboursChecked,
    apparent: configurationAt(looked.best),
    apparentMeets: looked.met,
    look: look ?? (at ? lookedAt(at, looking, first) : null),
  };
}
