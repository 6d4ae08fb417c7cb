import { type Experiment, readExperiment } from './experiment.ts';
import { linesOf } from './lines.ts';
import { beginsRecord, readRecord } from './record.ts';

/** A record of one run: its place in the plan, and its outcome as text. */
export const runRecord = (run: number, outcome: string): string => `{"run":${run},"outcome":${outcome}}`;

const RUN = /^\{"run":(\d+),"outcome":(.*)\}$/s;

/** How a journal was found. */
export interface Found {
  /** Null where the file ends within its first record, `other` where it is no journal. */
  readonly experiment: Experiment | 'other' | null;
  /** Records that are not whole, the last one apart. */
  readonly damaged: number;
  /** Whether the last record is cut. */
  readonly torn: boolean;
  /** Up to the end of the last line that has one, bytes. */
  readonly length: number;
}

/** Takes a run that is in a journal: its place in the plan, and its outcome as text. */
type Take = (run: number, outcome: string) => void;

/**
 * Reads a journal from an open file.
 * @param begin is told the experiment, and gives what takes its runs
 */
export function readJournal(fd: number, begin: (experiment: Experiment) => Take): Found {
  let experiment: Experiment | 'other' | null = null;
  let take: Take = () => {};
  let [damaged, torn, length] = [0, false, 0];
  for (const { bytes, ended } of linesOf(fd)) {
    const first = length === 0;
    if (!ended) {
      torn = true;
      if (first && !beginsRecord(bytes)) experiment = 'other';
      break;
    }
    length += bytes.length + 1;
    const json = readRecord(bytes);
    if (first) {
      experiment = (json !== null && readExperiment(json)) || 'other';
      if (experiment === 'other') break;
      take = begin(experiment);
      continue;
    }
    const [, run, outcome] = (json !== null && RUN.exec(json)) || [];
    if (run === undefined || outcome === undefined) damaged++;
    else take(Number(run), outcome);
  }
  return { experiment, damaged, torn, length };
}
