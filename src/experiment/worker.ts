import { workerData } from 'node:worker_threads';
import type { Outcome } from '../line/outcome.ts';
import type { Change } from '../scenario/changed.ts';
import type { Raw } from '../scenario/raw.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { inlineMore } from './inline-more.ts';
import type { ModulesAtWork } from './module-code.ts';
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
  /** Whether it is to tell what pictures show, too. */
  readonly look?: boolean;
  /** Whether all that happens is to be written down, of the scenario as it is written. */
  readonly trace?: boolean;
  /** Its place among the runs that are planned; for policies written as code. */
  readonly run?: number;
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

/** What a worker is given once. */
export interface Work {
  readonly scenario: Scenario;
  /** What it was read from; null where no task changes values. */
  readonly raw: Raw | null;
  /** Null where no policy is written as code. */
  readonly modules: ModulesAtWork | null;
}

// The pool hands its own data first and ours second.
const [, { scenario, raw, modules }] = workerData as [unknown, Work];
const code = modules && new (await import('./module-code.ts')).CodeOfModules(modules, scenario);

/** Beyond so many scenarios they are made anew, so that a long search does not fill the memory. */
const MOST_MADE = 256;

/** With other values; the policies of modules stand behind its own, as in the scenario itself. */
async function changed(changes: readonly Change[] | undefined): Promise<Scenario> {
  if (changes === undefined) return scenario;
  // What reads scenarios takes room in each thread, and most experiments change nothing.
  const { parseChanged } = await import('../scenario/parse.ts');
  const made = parseChanged(raw!, changes);
  return { ...made, policies: [...made.policies, ...scenario.policies.slice(made.policies.length)] };
}

/** The scenarios that were made from it, by variant. */
const made = new Map<string, Scenario>();

async function scenarioOf(variant: Variant | undefined): Promise<Scenario> {
  const key = JSON.stringify(variant ?? null);
  if (made.size >= MOST_MADE) made.clear();
  if (!made.has(key)) made.set(key, variantOf(await changed(variant?.changes), variant));
  return made.get(key)!;
}

/** Loaded only now, as most runs are not traced. */
const recorderFor = async (trace: boolean | undefined) =>
  trace ? new (await import('../line/trace/recorder.ts')).Recorder() : undefined;

export default async function run(task: Task): Promise<Answer> {
  const { policy, seed, variant, course, look, run = 0 } = task;
  try {
    const recorder = await recorderFor(task.trace);
    const outcome = simulate(
      await scenarioOf(variant),
      policy,
      seed,
      course,
      code?.of(policy, run),
      recorder,
      look,
    );
    await code?.settle(policy);
    return { outcome: recorder ? { ...outcome, trace: recorder.trace(scenario, policy, seed) } : outcome };
  } catch (error) {
    const failure = failureOf(error);
    if (failure !== null) return { failure };
    return { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}
