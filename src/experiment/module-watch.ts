import { FailedRunError, type Finished } from './failed-run.ts';
import type { ModulesAtWork } from './module-code.ts';
import { ModulePulses, watchPulses } from './module-pulse.ts';
import type { PolicyModuleFile } from './policy-module.ts';
import { runOf } from './run-words.ts';
import type { Task } from './worker.ts';

/** Policy modules at work, and an eye on them. */
export interface WatchedModules {
  /** What the workers need of it. */
  readonly work: ModulesAtWork;
  /** Never comes true; fails with a FailedRunError once a module does not come back. */
  readonly caught: Promise<never>;
  /** Ends the watching. */
  end(): void;
}

/**
 * @param tasks the runs, to which more may come up to `runs`
 * @param most time that a call of a module may take, s
 * @param kept the runs that have finished and are worth keeping
 */
export function watchModules(
  tasks: readonly Task[],
  runs: number,
  files: readonly PolicyModuleFile[],
  { most, kept }: { readonly most: number; readonly kept: () => Finished[] },
): WatchedModules {
  const pulses = new ModulePulses(runs);
  let end = () => {};
  const caught = new Promise<never>((_, reject) => {
    end = watchPulses(pulses, runs, most, (run, time) => {
      const task = tasks[run]!;
      const { path } = files.find(({ name }) => name === task.policy)!;
      const why = `at ${Number(time.toFixed(1))} s its module ${path} did not come back within ${most} s, as if it looped for ever`;
      reject(new FailedRunError(runOf(task), task.seed, why, kept()));
    });
  });
  return { work: { files, runs, pulses: pulses.memory, most }, caught, end: () => end() };
}
