import { InterruptedError } from '../experiment/interrupted.ts';
import { PILOT_RUNS, type Pilot, pilotToShow } from '../experiment/pilot.ts';
import type { RunsOptions } from '../experiment/runner.ts';
import { readScenario, type ScenarioFile } from '../experiment/scenario-file.ts';
import { type SettledFile, settled } from '../experiment/settled.ts';
import { heeded } from './interrupt.ts';
import { progress } from './progress.ts';

interface Given {
  readonly file: string;
  readonly with?: readonly string[];
  readonly workers?: number | undefined;
}

/** Runs a pilot, which shows how far it is, and which Ctrl-C ends in order. */
const piloting = <T>(workers: Given['workers'], run: (options: RunsOptions) => Promise<T>): Promise<T> =>
  heeded(async (signal) => {
    const shown = progress('warming up: pilot of {total} runs  {bar}  {value} finished', PILOT_RUNS);
    try {
      return await run({ workers, signal, onFinished: (finished) => shown.update(finished) });
    } catch (error) {
      if (error instanceof InterruptedError)
        error.message = `interrupted while warming up: ${error.done} of ${error.most} runs of the pilot had finished, and none else`;
      throw error;
    } finally {
      shown.stop();
    }
  });

/**
 * Reads a scenario; where its warm-up is by a pilot, runs it first.
 * @throws UnreadableFileError, ScenarioError, UnsettledError, FailedRunError, InterruptedError
 */
export async function readSettled({ file, with: supplements, workers }: Given): Promise<SettledFile> {
  const read = readScenario(file, supplements);
  if (read.scenario.run.warmUpBy !== 'pilot') return read;
  return piloting(workers, (options) => settled(read, options));
}

/** The pilot that a report shows its warm-up on, where another way than a pilot has found it. */
export const shownPilot = (read: ScenarioFile, { workers }: Given): Promise<Pilot | undefined> =>
  piloting(workers, (options) => pilotToShow(read, options));
