import { availableParallelism } from 'node:os';
import { Tinypool } from 'tinypool';
import type { Outcome } from '../line/outcome.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { FailedRunError, type Finished } from './failed-run.ts';
import { watchModules } from './module-watch.ts';
import { type PolicyModuleFile, withModules } from './policy-module.ts';
import { runOf } from './run-words.ts';
import type { Answer, Task, Work } from './worker.ts';

/** The runs were interrupted; those that had finished are kept where they are of use. */
export class InterruptedError extends Error {
  readonly finished: readonly Finished[];
  readonly planned: number;
  constructor(finished: readonly Finished[], planned: number) {
    super(`interrupted: ${finished.length} of ${planned} runs had finished`);
    this.name = 'InterruptedError';
    this.finished = finished;
    this.planned = planned;
  }
}

export interface RunManyOptions {
  /** Number of worker threads; by default one a core. */
  readonly workers?: number | undefined;
  /** Policies written as code, whose names stand among the tasks. */
  readonly modules?: readonly PolicyModuleFile[] | undefined;
  /** Time that a call of a policy module may take, s. */
  readonly moduleTimeout?: number | undefined;
  readonly signal?: AbortSignal;
  /** Which runs are of use when the others are cut short; by default those of the scenario as it is written. */
  readonly keep?: ((task: Task) => boolean) | undefined;
  readonly onFinished?: (finished: number, planned: number) => void;
  /** Told each run before it is counted; what it holds from before is not run again. */
  readonly journal?: RunJournal | null | undefined;
}

/** Keeps finished runs, by their place among the tasks. */
interface RunJournal {
  readonly finished: ReadonlyMap<number, Outcome>;
  add(run: number, outcome: Outcome): void;
}

/** Time that a call of a policy module may take unless another is said, s. */
export const MODULE_TIMEOUT = 10;

/** Every policy under seeds 1 to `seeds`: seed by seed, so that what has finished at any time can be paired. */
export function plan(policies: readonly string[], seeds: number): Task[] {
  return Array.from({ length: seeds }, (_, i) => policies.map((policy) => ({ policy, seed: i + 1 }))).flat();
}

/** The same, each followed by its undisturbed twin, with the courses of both. */
export function planTwins(policies: readonly string[], seeds: number): Task[] {
  return plan(policies, seeds).flatMap((task) => [
    { ...task, course: true },
    { ...task, course: true, variant: { disturbed: false } },
  ]);
}

/**
 * Does the runs on worker threads and returns their outcomes in the order of `tasks`, whatever order they
 * finished in.
 * @throws FailedRunError, InterruptedError
 */
export async function runMany(
  scenario: Scenario,
  tasks: readonly Task[],
  options: RunManyOptions = {},
): Promise<Outcome[]> {
  const {
    workers = availableParallelism(),
    modules: files = [],
    moduleTimeout = MODULE_TIMEOUT,
    signal,
    keep = ({ variant }) => variant === undefined,
    onFinished,
    journal,
  } = options;
  const outcomes = tasks.map((_, i) => journal?.finished.get(i));
  let finished = journal?.finished.size ?? 0;
  if (finished === tasks.length) return outcomes as Outcome[];
  const threads = Math.min(workers, tasks.length - finished);
  const kept = () =>
    tasks.flatMap((task, i): Finished[] => {
      const outcome = outcomes[i];
      return outcome !== undefined && keep(task) ? [{ task, outcome }] : [];
    });
  const code = files.length > 0 ? watchModules(tasks, files, moduleTimeout, kept) : null;
  const pool = new Tinypool({
    filename: new URL('./worker.js', import.meta.url).href,
    workerData: { scenario: withModules(scenario, files), modules: code?.work ?? null } satisfies Work,
    minThreads: threads,
    maxThreads: threads,
  });
  const running: Promise<void>[] = [];
  const one = async (task: Task, i: number) => {
    if (outcomes[i] !== undefined) return;
    const answer = (await pool.run(code ? { ...task, run: i } : task)) as Answer;
    if ('failure' in answer) {
      // Of several failures the first in the plan is told, whatever order the workers come to them in.
      await Promise.allSettled(running.slice(0, i));
      throw new FailedRunError(runOf(task), task.seed, answer.failure, kept());
    }
    if ('fault' in answer) throw new Error(answer.fault);
    journal?.add(i, answer.outcome);
    outcomes[i] = answer.outcome;
    onFinished?.(++finished, tasks.length);
  };
  const aborted = new Promise<never>((_, reject) => {
    const stop = () => reject(new InterruptedError(kept(), tasks.filter(keep).length));
    if (signal?.aborted) stop();
    signal?.addEventListener('abort', stop, { once: true });
  });
  try {
    for (const [i, task] of tasks.entries()) running.push(one(task, i));
    await Promise.race([Promise.all(running), aborted, ...(code ? [code.caught] : [])]);
    return outcomes as Outcome[];
  } finally {
    aborted.catch(() => {});
    code?.caught.catch(() => {});
    code?.end();
    await pool.destroy().catch(() => {});
  }
}
