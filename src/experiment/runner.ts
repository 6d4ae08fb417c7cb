import { availableParallelism } from 'node:os';
import { setFlagsFromString } from 'node:v8';
import { Tinypool } from 'tinypool';
import type { Outcome } from '../line/outcome.ts';
import type { Raw } from '../scenario/raw.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { FailedRunError, type Finished } from './failed-run.ts';
import { InterruptedError } from './interrupted.ts';
import { type WatchedModules, watchModules } from './module-watch.ts';
import { type PolicyModuleFile, withModules } from './policy-module.ts';
import { runOf } from './run-words.ts';
import type { Answer, Task, Work } from './worker.ts';

export interface RunsOptions {
  /** What the scenario was read from; needed where tasks change values. */
  readonly raw?: Raw | undefined;
  /** Number of worker threads; by default one a core. */
  readonly workers?: number | undefined;
  /** Policies written as code, whose names stand among the tasks. */
  readonly modules?: readonly PolicyModuleFile[] | undefined;
  /** Time that a call of a policy module may take, s. */
  readonly moduleTimeout?: number | undefined;
  readonly signal?: AbortSignal | undefined;
  /** Which runs are of use when the others are cut short; by default those of the scenario as it is written. */
  readonly keep?: ((task: Task) => boolean) | undefined;
  readonly onFinished?: ((finished: number, planned: number) => void) | undefined;
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

/** Room of a worker for what is short-lived, MB: a run makes little of it, and given more it would only lie about longer. */
const YOUNG = 12;

/** Beyond so many runs memory counts for more than some percent of time. */
const MANY = 2000;

/** Does runs on worker threads that stay, so that which run comes next can depend on what those before gave. */
export class Runner {
  private readonly options: RunsOptions;
  private readonly most: number;
  private readonly work: Omit<Work, 'modules'>;
  private readonly tasks: Task[] = [];
  private readonly outcomes: (Outcome | undefined)[] = [];
  private readonly code: WatchedModules | null;
  private readonly aborted: Promise<never>;
  private pool: Tinypool | null = null;
  private finished = 0;

  /** @param most how many runs there will be at most */
  constructor(scenario: Scenario, most: number, options: RunsOptions = {}) {
    this.options = options;
    this.most = most;
    const { modules: files = [], moduleTimeout = MODULE_TIMEOUT, signal, raw = null } = options;
    this.work = { scenario: withModules(scenario, files), raw };
    this.code =
      files.length > 0
        ? watchModules(this.tasks, most, files, { most: moduleTimeout, kept: () => this.kept() })
        : null;
    this.aborted = new Promise<never>((_, reject) => {
      const stop = () => reject(new InterruptedError({ finished: this.kept(), done: this.finished, most }));
      if (signal?.aborted) stop();
      signal?.addEventListener('abort', stop, { once: true });
    });
    this.aborted.catch(() => {});
    this.code?.caught.catch(() => {});
  }

  /**
   * Does these runs, which follow those before, and returns their outcomes in the order of `tasks`, whatever order they
   * finished in.
   * @throws FailedRunError, InterruptedError
   */
  async do(tasks: readonly Task[]): Promise<Outcome[]> {
    const from = this.tasks.length;
    if (from + tasks.length > this.most)
      throw new RangeError(`${from + tasks.length} runs, where at most ${this.most} were announced`);
    const { journal } = this.options;
    for (const task of tasks) {
      const there = journal?.finished.get(this.tasks.length);
      this.tasks.push(task);
      this.outcomes.push(there);
      if (there) this.finished++;
    }
    const running: Promise<void>[] = [];
    for (let i = from; i < this.tasks.length; i++) running.push(this.one(i, running, from));
    await Promise.race([Promise.all(running), this.aborted, ...(this.code ? [this.code.caught] : [])]);
    return this.outcomes.slice(from) as Outcome[];
  }

  /** Ends the threads. */
  async end(): Promise<void> {
    this.code?.end();
    await this.pool?.destroy().catch(() => {});
  }

  private readonly keep = (task: Task): boolean =>
    this.options.keep ? this.options.keep(task) : task.variant === undefined;

  private kept(): Finished[] {
    return this.tasks.flatMap((task, i): Finished[] => {
      const outcome = this.outcomes[i];
      return outcome !== undefined && this.keep(task) ? [{ task, outcome }] : [];
    });
  }

  private threads(): Tinypool {
    if (this.pool) return this.pool;
    const { workers = availableParallelism() } = this.options;
    const threads = Math.min(workers, this.most - this.finished);
    // Heaps then grow in small steps; left alone, each thread takes room for garbage that it never comes to need.
    if (this.most > MANY) setFlagsFromString('--optimize-for-size');
    this.pool = new Tinypool({
      filename: new URL('./worker.js', import.meta.url).href,
      workerData: { ...this.work, modules: this.code?.work ?? null } satisfies Work,
      minThreads: threads,
      maxThreads: threads,
      resourceLimits: { maxYoungGenerationSizeMb: YOUNG },
    });
    return this.pool;
  }

  private async one(i: number, running: readonly Promise<void>[], from: number): Promise<void> {
    if (this.outcomes[i] !== undefined) return;
    const task = this.tasks[i]!;
    const answer = (await this.threads().run(this.code ? { ...task, run: i } : task)) as Answer;
    if ('failure' in answer) {
      // Of several failures the first in the plan is told, whatever order the workers come to them in.
      await Promise.allSettled(running.slice(0, i - from));
      throw new FailedRunError(runOf(task), task.seed, answer.failure, this.kept());
    }
    if ('fault' in answer) throw new Error(answer.fault);
    this.options.journal?.add(i, answer.outcome);
    this.outcomes[i] = answer.outcome;
    this.options.onFinished?.(++this.finished, this.most);
  }
}
