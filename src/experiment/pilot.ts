import { MOST_SEEDS } from '../scenario/limits.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { WarmUpBy } from '../scenario/warm-up.ts';
import { movingAverage } from '../statistics/warm-up/moving-average.ts';
import { mser } from '../statistics/warm-up/mser.ts';
import { FailedRunError } from './failed-run.ts';
import { piloted } from './piloted.ts';
import { rollingOf } from './rolling.ts';
import { Runner, type RunsOptions } from './runner.ts';
import type { ScenarioFile } from './scenario-file.ts';
import type { Task } from './worker.ts';

/** Runs of a pilot; their seeds are none that a comparison uses. */
export const PILOT_RUNS = 10;
/** Readings that MSER-5 takes together. */
const BATCH = 5;
/** Batches on each side that the smoothed series goes over. */
const REACH = 2;

/** How the output of the line settles, by runs of its own. */
export interface Pilot {
  /** How the warm-up was chosen, and how long it is, s. */
  readonly by: WarmUpBy;
  readonly warmUp: number;
  /** The policy that the runs followed, the first one, without disturbances. */
  readonly policy: string;
  readonly runs: number;
  /** How long each took, s. */
  readonly length: number;
  /** Length of a batch, s, and in each the mean over runs of good assemblies per hour. */
  readonly batch: number;
  readonly rates: readonly number[];
  /** The same as a moving average, by P. D. Welch's rule. */
  readonly smoothed: readonly number[];
  /** Where MSER-5 would begin to count, s; null where it finds no place in the first half. */
  readonly settled: number | null;
}

/** The line does not settle within the pilot, so no warm-up can be read off it. */
export class UnsettledError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'UnsettledError';
  }
}

/**
 * What the counts of good assemblies by bin say.
 * @param goods one series a run, all equally long
 */
export function pilotOf(scenario: Scenario, policy: string, goods: readonly ArrayLike<number>[]): Pilot {
  const { run } = piloted(scenario);
  const { bin } = rollingOf(run);
  const series = Array.from(goods[0]!, (_, i) => {
    const sum = goods.reduce((total, good) => total + good[i]!, 0);
    return ((sum / goods.length) * 3600) / bin;
  });
  const { drop, late } = mser(series, BATCH);
  const rates = Array.from({ length: Math.floor(series.length / BATCH) }, (_, i) => {
    const own = series.slice(i * BATCH, (i + 1) * BATCH);
    return own.reduce((sum, rate) => sum + rate, 0) / BATCH;
  });
  const settled = late ? null : Number((drop * bin).toFixed(3));
  const { warmUpBy: by, warmUp } = scenario.run;
  return {
    by,
    warmUp: by === 'pilot' ? (settled ?? 0) : warmUp,
    policy,
    runs: goods.length,
    length: run.length,
    batch: bin * BATCH,
    rates,
    smoothed: movingAverage(rates, REACH),
    settled,
  };
}

const tasks = (policy: string): Task[] =>
  Array.from({ length: PILOT_RUNS }, (_, i) => ({
    policy,
    seed: MOST_SEEDS + 1 + i,
    course: true,
    variant: { disturbed: false, pilot: true },
  }));

/**
 * Runs the pilot of a scenario under its first policy.
 * @throws FailedRunError, InterruptedError
 */
export async function runPilot(
  { scenario }: Pick<ScenarioFile, 'scenario'>,
  options: Pick<RunsOptions, 'workers' | 'signal' | 'onFinished'> = {},
): Promise<Pilot> {
  const policy = scenario.policies[0]!.name;
  const runner = new Runner(scenario, PILOT_RUNS, options);
  try {
    const outcomes = await runner.do(tasks(policy));
    const goods = outcomes.map(({ course }) => course!.good);
    return pilotOf(scenario, policy, goods);
  } finally {
    await runner.end();
  }
}

/** The same, to show a warm-up that was chosen without it: none where a run fails, which those that count will tell. */
export async function pilotToShow(...given: Parameters<typeof runPilot>): Promise<Pilot | undefined> {
  try {
    return await runPilot(...given);
  } catch (error) {
    if (error instanceof FailedRunError) return undefined;
    throw error;
  }
}
