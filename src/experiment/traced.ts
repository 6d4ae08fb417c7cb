import type { Outcome } from '../line/outcome.ts';
import { Recorder } from '../line/trace/recorder.ts';
import type { Trace } from '../line/trace/trace.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { FailedRunError } from './failed-run.ts';
import { failureOf } from './run-failure.ts';
import { runOf } from './run-words.ts';
import { Runner, type RunsOptions } from './runner.ts';
import { simulate } from './simulate.ts';

export interface Traced {
  readonly trace: Trace;
  /** The same, digit by digit, as that of the run without a trace. */
  readonly outcome: Outcome;
}

/**
 * One run with all that happened in it.
 * @throws FailedRunError
 */
export function traced(scenario: Scenario, policy: string, seed: number): Traced {
  const recorder = new Recorder();
  try {
    const outcome = simulate(scenario, policy, seed, false, undefined, recorder);
    return { outcome, trace: recorder.trace(scenario, policy, seed) };
  } catch (error) {
    const failure = failureOf(error);
    throw failure === null ? error : new FailedRunError(runOf({ policy, seed }), seed, failure, []);
  }
}

/**
 * The same of a policy that may be code: a thread of its own does the run, since code may never come back.
 * @throws FailedRunError
 */
export async function tracedApart(
  scenario: Scenario,
  policy: string,
  seed: number,
  modules: Pick<RunsOptions, 'modules' | 'moduleTimeout' | 'signal'>,
): Promise<Trace> {
  const runner = new Runner(scenario, 1, { ...modules, workers: 1 });
  try {
    const [outcome] = await runner.do([{ policy, seed, trace: true }]);
    return outcome!.trace!;
  } finally {
    await runner.end();
  }
}
