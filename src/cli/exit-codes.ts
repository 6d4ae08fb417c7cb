/** What each exit code of the command means; the README lists them from here. */
export const EXIT = {
  done: 0,
  fault: 1,
  usage: 2,
  scenario: 3,
  failedRun: 4,
  unwritable: 5,
  differs: 6,
  interrupted: 130,
} as const;

export const EXIT_MEANINGS: Readonly<Record<number, string>> = {
  0: 'done',
  1: 'a fault of mendline itself; the trace is shown',
  2: 'the command was used wrongly',
  3: 'the scenario cannot be read or has problems',
  4: 'a run failed',
  5: 'the output folder cannot be written',
  6: 'a report was not made again: other bytes came of it, or what it was made from has changed',
  130: 'interrupted with Ctrl-C; finished runs were kept',
};
