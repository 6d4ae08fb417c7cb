import { SingleBar } from 'cli-progress';
import { FailedRunError, InterruptedError, plan, runMany } from '../experiment/run-many.ts';
import type { ScenarioFile } from '../experiment/scenario-file.ts';
import type { Outcome } from '../line/outcome.ts';
import type { PolicySpec } from '../scenario/scenario.ts';

export interface RunsOptions {
  readonly policies: readonly PolicySpec[];
  readonly seeds: number;
  readonly workers: number | undefined;
  /** Called with what had finished when the runs were cut short; returns the path it was kept at. */
  readonly keep?: (finished: readonly Outcome[]) => string;
}

/** Does the runs with a progress bar on stderr when that is a terminal; Ctrl-C ends them in order. */
export async function doRuns(
  { scenario }: ScenarioFile,
  { policies, seeds, workers, keep }: RunsOptions,
): Promise<Outcome[]> {
  const tasks = plan(
    policies.map(({ name }) => name),
    seeds,
  );
  const bar = new SingleBar({
    stream: process.stderr,
    format: '{value} of {total} runs  {bar}  {eta_formatted} to go',
    barsize: 30,
    barCompleteChar: '=',
    barIncompleteChar: ' ',
    hideCursor: true,
    clearOnComplete: true,
  });
  const shown = process.stderr.isTTY === true;
  if (shown) bar.start(tasks.length, 0);
  const interrupt = new AbortController();
  const onSignal = () => interrupt.abort();
  process.once('SIGINT', onSignal);
  process.once('SIGTERM', onSignal);
  try {
    return await runMany(scenario, tasks, {
      workers,
      signal: interrupt.signal,
      onFinished: (finished) => shown && bar.update(finished),
    });
  } catch (error) {
    if (
      keep &&
      (error instanceof InterruptedError || error instanceof FailedRunError) &&
      error.finished.length > 0
    ) {
      const path = keep(error.finished);
      error.message +=
        error instanceof InterruptedError
          ? `; they are kept in ${path}`
          : `; ${error.finished.length} finished runs are kept in ${path}`;
    }
    throw error;
  } finally {
    if (shown) bar.stop();
    process.off('SIGINT', onSignal);
    process.off('SIGTERM', onSignal);
  }
}
