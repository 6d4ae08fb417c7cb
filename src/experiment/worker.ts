import { workerData } from 'node:worker_threads';
import type { Outcome } from '../line/outcome.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { simulate } from './simulate.ts';

/** One run to do. */
export interface Task {
  readonly policy: string;
  readonly seed: number;
}

/** What a worker sends back: errors lose their class on the way, so a failed run comes as words. */
export type Answer = { readonly outcome: Outcome } | { readonly failure: string };

// The pool hands its own data first and ours second.
const [, scenario] = workerData as [unknown, Scenario];

export default function run({ policy, seed }: Task): Answer {
  try {
    return { outcome: simulate(scenario, policy, seed) };
  } catch (error) {
    return { failure: error instanceof Error ? error.message : String(error) };
  }
}
