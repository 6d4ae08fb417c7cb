import type { Task } from './task.ts';

/** The set-ups and the planned maintenance of one machine, in the order in which they are done when due together. */
export class Upkeep {
  readonly #tasks: readonly Task[];

  constructor(tasks: readonly Task[]) {
    this.#tasks = tasks;
  }

  /** The first that is due. */
  due(): Task | null {
    for (const task of this.#tasks) if (task.isDue) return task;
    return null;
  }
}
