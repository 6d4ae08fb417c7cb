import { type Change, changedRaw } from '../scenario/changed.ts';
import { parseChanged } from '../scenario/parse.ts';
import { type Pilot, runPilot, UnsettledError } from './pilot.ts';
import type { RunsOptions } from './runner.ts';
import type { ScenarioFile } from './scenario-file.ts';

/**
 * The scenario with the warm-up that its pilot found; itself where none was to be found.
 * @throws UnsettledError
 */
export function settledBy(read: ScenarioFile, { by, settled, policy, runs, length }: Pilot): ScenarioFile {
  if (by !== 'pilot') return read;
  if (settled === null)
    throw new UnsettledError(
      `${read.path}: the pilot, ${runs} undisturbed runs of "${policy}" over ${length} s, does not settle within ` +
        'half of that, so no warm-up can be read off it; give run a greater "length", or a "warm-up" of its own',
    );
  const changes: Change[] = [{ at: 'run/warm-up', is: `${settled} s` }];
  return { ...read, raw: changedRaw(read.raw, changes), scenario: parseChanged(read.raw, changes) };
}

/** A scenario file, and the pilot that found its warm-up, where one did. */
export interface SettledFile extends ScenarioFile {
  readonly pilot?: Pilot;
}

/**
 * Settles a warm-up that is by a pilot, which it runs.
 * @throws UnsettledError, FailedRunError, InterruptedError
 */
export async function settled(
  read: ScenarioFile,
  options: Pick<RunsOptions, 'workers' | 'signal' | 'onFinished'> = {},
): Promise<SettledFile> {
  const pilot = await runPilot(read, options);
  return { ...settledBy(read, pilot), pilot };
}
