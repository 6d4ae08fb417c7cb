import { workerData } from 'node:worker_threads';
import type { Outcome } from '../line/outcome.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { inlineMore } from './inline-more.ts';
import { failureOf } from './run-failure.ts';
import { simulate } from './simulate.ts';
import { type Variant, variantOf } from './variant.ts';

/** One run to do. */
export interface Task {
  readonly policy: string;
  readonly seed: number;
  /** Left out, the scenario as it is written. */
  readonly variant?: Variant;
  /** Whether the outcome is to tell how the output went. */
  readonly course?: boolean;
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

/** The scenarios that were made from it, by variant. */
const made = new Map<string, Scenario>();

function scenarioOf(variant: Variant | undefined): Scenario {
  const key = JSON.stringify(variant ?? null);
  if (!made.has(key)) made.set(key, variantOf(scenario, variant));
  return made.get(key)!;
}

export default function run({ policy, seed, variant, course }: Task): Answer {
  try {
    return { outcome: simulate(scenarioOf(variant), policy, seed, course) };
  } catch (error) {
    const failure = failureOf(error);
    if (failure !== null) return { failure };
    return { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}
