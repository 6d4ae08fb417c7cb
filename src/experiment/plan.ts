import type { Task } from './worker.ts';

/** Only the first so many seeds tell what pictures show, so that what is kept does not grow with their number. */
const LOOKED = 30;

/** Every policy under seeds 1 to `seeds`: seed by seed, so that what has finished at any time can be paired. */
export function plan(policies: readonly string[], seeds: number): Task[] {
  return Array.from({ length: seeds }, (_, i) => policies.map((policy) => ({ policy, seed: i + 1 }))).flat();
}

/** The same, the first of them with what pictures show. */
export function planLooked(policies: readonly string[], seeds: number): Task[] {
  return plan(policies, seeds).map((task) => (task.seed <= LOOKED ? { ...task, look: true } : task));
}

/** The same, each followed by its undisturbed twin, with the courses of both. */
export function planTwins(policies: readonly string[], seeds: number): Task[] {
  return planLooked(policies, seeds).flatMap((task) => [
    { ...task, course: true },
    { policy: task.policy, seed: task.seed, course: true, variant: { disturbed: false } },
  ]);
}
