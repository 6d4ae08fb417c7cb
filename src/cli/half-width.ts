import { type Narrowed, type Narrowing, untilNarrow } from '../experiment/narrow.ts';
import { planLooked, planTwins } from '../experiment/plan.ts';
import type { ScenarioFile } from '../experiment/scenario-file.ts';
import { Budget } from '../experiment/selection/budget.ts';
import { MEASURES } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import { isBound } from '../scenario/bound.ts';
import { type RunsOptions, withRunner } from './runs.ts';
import { type GivenStopping, stoppingOf } from './stopping.ts';
import { worthOf } from './worth.ts';

export interface GivenHalfWidth extends GivenStopping {
  readonly halfWidth?: string;
}

interface Options extends Omit<RunsOptions, 'seeds'> {
  /** Whether each run is to be followed by its undisturbed twin. */
  readonly twinned: boolean;
}

/** The runs, each followed by its twin where there are such, and what became of the width. */
export interface NarrowRuns {
  readonly narrowed: Narrowed;
  readonly outcomes: readonly Outcome[];
}

/**
 * What `--half-width` asks for.
 * @throws UsageError
 */
export function narrowingOf(
  given: GivenHalfWidth & { readonly halfWidth: string },
  policies: RunsOptions['policies'],
): Narrowing & { readonly within: number } {
  const [[key, half]] = worthOf([given.halfWidth], '--half-width') as unknown as [[string, number]];
  const measure = MEASURES.find((one) => one.key === key)!;
  const names = policies.filter((policy) => !isBound(policy)).map(({ name }) => name);
  return { policies: names, measure, half, ...stoppingOf(given) };
}

/** Runs every policy under as many seeds as it takes until the interval of each mean is narrow enough. */
export async function doUntilNarrow(
  read: ScenarioFile,
  { within, ...narrowing }: ReturnType<typeof narrowingOf>,
  { policies, twinned, ...options }: Options,
): Promise<NarrowRuns> {
  const { measure, half, firstStage, most } = narrowing;
  const names = policies.map(({ name }) => name);
  const tasksOf = twinned ? planTwins : planLooked;
  const procedure = {
    most: tasksOf(names, most).length,
    words: 'a comparison until the intervals are narrow',
    ...{ policies: policies.length, seeds: most, twins: twinned },
    settings: { policies: names, by: measure.key, half, firstStage, most },
  };
  const budget = new Budget(within, () => performance.now() / 1000);
  const outcomes: Outcome[] = [];
  const narrowed = await withRunner(read, procedure, options, (runner) =>
    untilNarrow(
      narrowing,
      async (seed) => {
        outcomes.push(...(await runner.do(tasksOf(names, seed).slice(outcomes.length))));
        return twinned ? outcomes.filter((_, i) => i % 2 === 0) : outcomes;
      },
      budget,
    ),
  );
  return { narrowed, outcomes };
}

/** Seeds and cap as words, those that the time left where it was over. */
export function narrowWords({ seeds, atMost, halfWidth }: GivenHalfWidth, narrowed: Narrowed): string[] {
  const asked = stoppingOf({
    ...(seeds !== undefined && { seeds }),
    ...(atMost !== undefined && { atMost }),
  });
  const first = narrowed.firstStage === asked.firstStage ? seeds : narrowed.firstStage;
  const most = narrowed.most === asked.most ? atMost : narrowed.most;
  return [
    ...['--half-width', halfWidth!],
    ...(first === undefined ? [] : ['--seeds', String(first)]),
    ...(most === undefined ? [] : ['--at-most', String(most)]),
  ];
}
