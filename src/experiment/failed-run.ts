import type { Outcome } from '../line/outcome.ts';

/** A run failed; the runs that had finished are kept. */
export class FailedRunError extends Error {
  readonly finished: readonly Outcome[];
  constructor(run: string, seed: number, why: string, finished: readonly Outcome[]) {
    super(`${run} under seed ${seed} failed: ${why}`);
    this.name = 'FailedRunError';
    this.finished = finished;
  }
}
