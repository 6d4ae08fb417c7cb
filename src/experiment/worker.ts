import { workerData } from 'node:worker_threads';
import type { Outcome } from '../line/outcome.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { inlineMore } from './inline-more.ts';
import { failureOf } from './run-failure.ts';
import { simulate } from './simulate.ts';

/** One run to do. */
export interface Task {
  readonly policy: string;
  readonly seed: number;
}

/**
 * What a worker sends back: errors lose their class on the way, so a run that failed comes as words, and a fault of the
 * program as its trace.
 */
export type Answer =
  | { readonly outcome: Outcome }
  | { readonly failure: string }
  | { readonly fault: string };

inlineMore();

// The pool hands its own data first and ours second.
const [, scenario] = workerData as [unknown, Scenario];

export default function run({ policy, seed }: Task): Answer {
  try {
    return { outcome: simulate(scenario, policy, seed) };
  } catch (error) {
    const failure = failureOf(error);
    if (failure !== null) return { failure };
    return { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}
