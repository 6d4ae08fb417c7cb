import type { Exercise, Setting } from '../exercise/exercise.ts';
import { trial, type Values } from '../exercise/trial.ts';
import { failureOf } from '../experiment/run-failure.ts';

/** What a worker is asked: all runs at one setting. */
export interface Request {
  readonly exercise: Exercise;
  readonly setting: Setting;
}

/**
 * What it says: the values of each run as it ends, then that all are done, or why they are not: what keeps the line from
 * running at this setting, or a fault that is not the setting's.
 */
export type Reply =
  | { readonly values: Values }
  | { readonly done: true }
  | { readonly failure: string }
  | { readonly fault: string };

function answer({ exercise, setting }: Request, reply: (reply: Reply) => void): void {
  try {
    for (const values of trial(exercise, setting)) reply({ values });
    reply({ done: true });
  } catch (error) {
    const failure = failureOf(error);
    if (failure !== null) reply({ failure });
    else
      reply({
        fault: `mendline met a fault of its own: ${error instanceof Error ? error.message : String(error)}`,
      });
  }
}

/** Answers what the page asks, one request after the other. */
export function serve(): void {
  const port = self as unknown as Pick<Worker, 'postMessage' | 'onmessage'>;
  port.onmessage = ({ data }: MessageEvent<Request>) => answer(data, (reply) => port.postMessage(reply));
}
