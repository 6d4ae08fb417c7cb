import { LEVEL } from '../experiment/comparison.ts';
import { simulate } from '../experiment/simulate.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { type Estimate, possible } from '../statistics/estimate.ts';
import { meanInterval } from '../statistics/mean-interval.ts';
import type { Exercise, Setting } from './exercise.ts';
import { policyAt, scenarioAt } from './setting.ts';
import { type Watched, watchable } from './watched.ts';

/** What is watched, in order; `null` where a run gives no value. */
export type Values = readonly (number | null)[];

/** What of a line is watched for, in the order of `watch`. */
export function watchedOf({ stocks }: Pick<Scenario, 'stocks'>, watch: readonly string[]): Watched[] {
  const all = watchable(stocks.filter(({ unlimited }) => !unlimited).map(({ name }) => name));
  return watch.map((name) => all.find((one) => one.name === name)!);
}

/**
 * Runs the line under seed 1, 2 and so on, as the command line would, and hands over what is watched after each.
 * @throws ChangeError, and what a run may throw
 */
export function* trial(exercise: Exercise, setting: Setting): Generator<Values> {
  const scenario = scenarioAt(exercise, setting);
  const policy = policyAt(exercise, setting);
  const watched = watchedOf(scenario, exercise.watch);
  for (let seed = 1; seed <= exercise.seeds; seed++) {
    const outcome = simulate(scenario, policy, seed);
    yield watched.map(({ of }) => of(outcome));
  }
}

const column = (runs: readonly Values[], i: number) => runs.map((values) => values[i] ?? null);

/** The estimate of what is watched at place `i`; null where no run gives a value. */
export function estimateOf(
  runs: readonly Values[],
  i: number,
  { most }: Pick<Watched, 'most'>,
): Estimate | null {
  const found = column(runs, i).filter((value) => value !== null);
  return found.length === 0 ? null : possible(meanInterval(found, LEVEL), { least: 0, most });
}

/**
 * How much more the one setting gives than the other, by pairs of runs under the same seed; null where there are none.
 * @param comparisons how many such differences are looked at together
 */
export function differenceOf(
  runs: readonly Values[],
  others: readonly Values[],
  { i, comparisons }: { readonly i: number; readonly comparisons: number },
): Estimate | null {
  const other = column(others, i);
  const pairs = column(runs, i).flatMap((one, seed) => {
    const against = other[seed] ?? null;
    return one === null || against === null ? [] : [one - against];
  });
  return pairs.length === 0 ? null : meanInterval(pairs, LEVEL, comparisons);
}
