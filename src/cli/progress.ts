import { SingleBar } from 'cli-progress';

/** Shows on a terminal how far runs are. */
export interface Progress {
  update(finished: number): void;
  stop(): void;
}

/**
 * A line on stderr where that is a terminal, and nothing anywhere else.
 * @param format what it says, with `{value}` and `{total}` in it
 */
export function progress(format: string, total: number, finished = 0): Progress {
  if (process.stderr.isTTY !== true) return { update: () => {}, stop: () => {} };
  const bar = new SingleBar({
    ...{ stream: process.stderr, format, barsize: 30, barCompleteChar: '=', barIncompleteChar: ' ' },
    ...{ hideCursor: true, clearOnComplete: true },
  });
  bar.start(total, finished);
  return { update: (value) => bar.update(value), stop: () => bar.stop() };
}
