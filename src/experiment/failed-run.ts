import type { Outcome } from '../line/outcome.ts';
import type { Task } from './worker.ts';

/** A run that had finished when the others were cut short. */
export interface Finished {
  readonly task: Task;
  readonly outcome: Outcome;
}

/** A run failed; the runs that had finished are kept. */
export class FailedRunError extends Error {
  readonly finished: readonly Finished[];
  constructor(run: string, seed: number, why: string, finished: readonly Finished[]) {
    super(`${run} under seed ${seed} failed: ${why}`);
    this.name = 'FailedRunError';
    this.finished = finished;
  }
}
