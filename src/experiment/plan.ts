import type { Task } from './worker.ts';

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
