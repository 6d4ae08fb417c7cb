import type { Finished } from './failed-run.ts';

/** What had become of runs that were interrupted. */
interface Progress {
  /** Those that had finished and are of use by themselves. */
  readonly finished: readonly Finished[];
  /** All that had finished, twins among them, as progress counts them. */
  readonly done: number;
  /** The most that there could have been. */
  readonly most: number;
}

/** The runs were interrupted; those that had finished are kept where they are of use. */
export class InterruptedError extends Error {
  readonly finished: readonly Finished[];
  readonly done: number;
  readonly most: number;
  constructor({ finished, done, most }: Progress, message?: string) {
    super(message ?? `interrupted: ${done} of ${most} runs had finished`);
    this.name = 'InterruptedError';
    this.finished = finished;
    this.done = done;
    this.most = most;
  }
}
