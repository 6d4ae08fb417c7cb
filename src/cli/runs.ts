import { basename, extname, join } from 'node:path';
import { FailedRunError, type Finished } from '../experiment/failed-run.ts';
import { InterruptedError } from '../experiment/interrupted.ts';
import type { Procedure } from '../experiment/journal/experiment.ts';
import { plan, planLooked, planTwins } from '../experiment/plan.ts';
import { type CrossedRun, type Crossing, crossedRuns, planCrossed } from '../experiment/plan-crossed.ts';
import { Runner } from '../experiment/runner.ts';
import type { ScenarioFile } from '../experiment/scenario-file.ts';
import type { Pair } from '../experiment/twin-measures.ts';
import type { Design } from '../experiment/varied/design.ts';
import type { Factor } from '../experiment/varied/factor.ts';
import { planVaried, type VariedRun } from '../experiment/varied/plan-varied.ts';
import type { Task } from '../experiment/worker.ts';
import type { Outcome } from '../line/outcome.ts';
import { crossedCsv } from '../report/crossed/crossed-csv.ts';
import { runsCsv } from '../report/csv.ts';
import { OutputFolder } from '../report/output-folder.ts';
import { variedCsv } from '../report/varied/varied-csv.ts';
import type { PolicySpec } from '../scenario/scenario.ts';
import { heeded, runsAreDone } from './interrupt.ts';
import type { JournalOfCommand } from './journal-of-command.ts';
import type { Modules } from './modules.ts';
import { progress } from './progress.ts';

/** Holds the runs that had finished when the others were cut short. */
export const UNFINISHED = 'unfinished-runs.csv';
export const UNFINISHED_CROSSED = 'unfinished-cross.csv';
export const UNFINISHED_VARIED = 'unfinished-vary.csv';

/** What is kept of runs that were cut short. */
interface Keeping {
  readonly name: string;
  readonly keep?: (task: Task) => boolean;
  readonly csv: (finished: readonly Finished[]) => string;
}

const AS_WRITTEN: Keeping = {
  name: UNFINISHED,
  csv: (finished) => runsCsv(finished.map(({ outcome }) => outcome)),
};

/**
 * The folder that reports on a scenario go to unless another is named. With a number of seeds other than the
 * scenario's it is another one, so that a quick look does not replace the full report; so it is with what `joining` says.
 */
export function defaultFolder(scenarioPath: string, seeds?: number, joining = ''): string {
  const name = `${basename(scenarioPath, extname(scenarioPath))}${joining}`;
  return join('reports', seeds === undefined ? name : `${name}-${seeds}-seeds`);
}

export interface RunsOptions {
  readonly policies: readonly PolicySpec[];
  readonly seeds: number;
  readonly workers: number | undefined;
  /** Whether what pictures show is wanted, too; with twins it always is. */
  readonly look?: boolean;
  readonly modules: Modules;
  /** Where runs that had finished are kept when the others do not; by default the folder of the scenario's report. */
  readonly out?: string | undefined;
  readonly journal?: JournalOfCommand | undefined;
  /** The runs in the order of their plan where all of them are done already. */
  readonly done?: readonly Outcome[] | undefined;
}

/** Runs every policy under every seed, seed by seed. */
export async function doRuns(file: ScenarioFile, options: RunsOptions): Promise<Outcome[]> {
  const planned = options.look ? planLooked : plan;
  return [...(options.done ?? (await doTasks(file, planned(names(options), options.seeds), options)))];
}

/** The same, each run with its undisturbed twin. */
export async function doTwins(file: ScenarioFile, options: RunsOptions): Promise<Pair[]> {
  const outcomes = options.done ?? (await doTasks(file, planTwins(names(options), options.seeds), options));
  return outcomes.flatMap((run, i) => (i % 2 === 0 ? [{ run, twin: outcomes[i + 1]! }] : []));
}

/** Runs every policy in every case at every severity. */
export async function doCrossed(
  file: ScenarioFile,
  crossing: Crossing,
  options: RunsOptions,
): Promise<CrossedRun[]> {
  const tasks = planCrossed(crossing, options.seeds);
  const keeping: Keeping = {
    name: UNFINISHED_CROSSED,
    keep: () => true,
    csv: (finished) => crossedCsv(crossedRuns(crossing, finished)),
  };
  const outcomes = await doTasks(file, tasks, options, keeping);
  return crossedRuns(
    crossing,
    tasks.map((task, i) => ({ task, outcome: outcomes[i]! })),
  );
}

/** Runs every point of a varied experiment. */
export async function doVaried(
  file: ScenarioFile,
  { factors, design, policy }: { factors: readonly Factor[]; design: Design; policy: string },
  options: RunsOptions,
): Promise<VariedRun[]> {
  const planned = planVaried(factors, design, options.seeds, policy);
  const pointOf = new Map(planned.map(({ task, point }) => [task, point]));
  const keeping: Keeping = {
    name: UNFINISHED_VARIED,
    keep: () => true,
    csv: (finished) =>
      variedCsv(
        factors,
        design,
        finished.map(({ task, outcome }) => ({ point: pointOf.get(task)!, outcome })),
      ),
  };
  const tasks = planned.map(({ task }) => task);
  const outcomes = await doTasks(file, tasks, options, keeping);
  return planned.map(({ point }, i) => ({ point, outcome: outcomes[i]! }));
}

const names = ({ policies }: RunsOptions) => policies.map(({ name }) => name);

const doTasks = (
  file: ScenarioFile,
  tasks: readonly Task[],
  options: RunsOptions,
  keeping?: Keeping,
): Promise<Outcome[]> => withRunner(file, tasks, options, (runner) => runner.do(tasks), keeping);

/** Which of the runs that had finished are kept: twins are of no use by themselves. */
function keptWords(error: InterruptedError | FailedRunError): string {
  const { length } = error.finished;
  if (error instanceof FailedRunError) return `${length} finished runs are`;
  return length === error.done ? 'they are' : `${length} of them, those that are no twins, are`;
}

/**
 * Lets runs be done with a progress bar on stderr when that is a terminal; Ctrl-C ends them in order.
 * @param planned the runs, or what decides which come
 */
export async function withRunner<T>(
  { scenario, raw, path }: ScenarioFile,
  planned: readonly Task[] | Procedure,
  { workers, modules, out, journal: notes }: Omit<RunsOptions, 'policies' | 'seeds'>,
  use: (runner: Runner) => Promise<T>,
  keeping = AS_WRITTEN,
): Promise<T> {
  const journal = notes?.begin(planned);
  const most = 'settings' in planned ? planned.most : planned.length;
  const counted = 'settings' in planned ? `at most ${most}` : String(most);
  const format = `{value} of ${counted} runs  {bar}  {eta_formatted} to go`;
  const shown = progress(format, most, journal?.finished.size ?? 0);
  return heeded(async (signal) => {
    const runner = new Runner(scenario, most, {
      raw,
      workers,
      modules: modules.files,
      moduleTimeout: modules.timeout,
      signal,
      keep: keeping.keep,
      journal,
      onFinished: (finished) => shown.update(finished),
    });
    try {
      const found = await use(runner);
      runsAreDone();
      return found;
    } catch (error) {
      if (error instanceof InterruptedError)
        error.message = `interrupted: ${error.done} of ${counted} runs had finished`;
      if (
        (error instanceof InterruptedError || error instanceof FailedRunError) &&
        error.finished.length > 0
      ) {
        const folder = new OutputFolder(out ?? defaultFolder(path));
        const kept = folder.write(keeping.name, keeping.csv(error.finished));
        error.message += `; ${keptWords(error)} kept in ${kept}`;
      }
      throw error;
    } finally {
      await runner.end();
      shown.stop();
    }
  });
}
