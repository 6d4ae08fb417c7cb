import { closeSync, ftruncateSync, openSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import type { Outcome } from '../../line/outcome.ts';
import { putAside, removeAside } from './aside.ts';
import { readJournal, runRecord } from './contents.ts';
import { ForeignJournalError, UnwritableJournalError } from './errors.ts';
import { type Experiment, whyForeign } from './experiment.ts';
import { Lock } from './lock.ts';
import { outcomeText, readOutcome } from './outcome-text.ts';
import { recordLine } from './record.ts';
import { Syncing, syncFolder } from './syncing.ts';

const JOURNAL = 'runs.journal';

/** What a journal is opened for. */
interface Wanted {
  readonly experiment: Experiment;
  /** Whether to go on from the runs that are there. */
  readonly resume: boolean;
}

/**
 * The finished runs of an experiment, on disk as they come, so that one that was killed goes on where it was. A run is handed
 * to the system before it is counted, so that the end of the process loses none; a power cut can take those
 * of the last second or so, which are then run again.
 */
export class Journal {
  readonly path: string;
  /** The runs that were there when it was opened, by their place in the plan. */
  readonly finished: ReadonlyMap<number, Outcome>;
  /** What to tell of how it was found, each a sentence. */
  readonly news: readonly string[];
  private readonly folder: string;
  private readonly experiment: Experiment;
  private readonly lock: Lock;
  private readonly fd: number;
  private readonly syncing: Syncing;
  private length = 0;
  private count: number;
  private failure: UnwritableJournalError | null = null;
  private open = true;

  /** @throws ForeignJournalError, JournalInUseError, UnwritableJournalError */
  constructor(folder: string, { experiment, resume }: Wanted) {
    this.folder = folder;
    this.path = join(folder, JOURNAL);
    this.experiment = experiment;
    this.lock = new Lock(`${this.path}.lock`);
    const news: string[] = [];
    const finished = new Map<number, Outcome>();
    try {
      if (!resume) news.push(...putAside(this.path, experiment));
      this.fd = openSync(this.path, resume ? 'a+' : 'w+');
      this.syncing = new Syncing(this.fd);
      if (resume) news.push(this.goOn(finished));
      if (this.length === 0) {
        this.write(JSON.stringify(experiment));
        this.syncing.now();
        syncFolder(folder);
      }
    } catch (error) {
      this.lock.release();
      const told = error instanceof ForeignJournalError || error instanceof UnwritableJournalError;
      throw told ? error : new UnwritableJournalError(this.path, error);
    }
    this.news = news;
    this.finished = finished;
    this.count = finished.size;
  }

  /** Notes a run that has finished. Nothing where the journal was closed meanwhile: the run is then not counted either. */
  add(run: number, outcome: Outcome): void {
    if (!this.open) return;
    if (this.failure) throw this.failure;
    try {
      if (this.syncing.failure) throw this.syncing.failure;
      this.write(runRecord(run, outcomeText(outcome)));
    } catch (error) {
      this.failure = new UnwritableJournalError(this.path, error);
      throw this.failure;
    }
    this.count++;
  }

  /** Whether there are runs in it. */
  get holds(): boolean {
    return this.count > 0;
  }

  /** Lets go of the file, which is kept if any run is in it. */
  close(): void {
    if (!this.open) return;
    this.open = false;
    try {
      if (this.holds) this.syncing.now();
    } catch {
      // What could not be written for good was told when it was tried.
    }
    this.end();
    if (!this.holds) rmSync(this.path, { force: true });
    this.lock.release();
  }

  /** The experiment is over and its report is written: the journal goes, and those put aside that say no more than it. */
  finish(): void {
    if (!this.open) return;
    this.open = false;
    this.end();
    rmSync(this.path, { force: true });
    removeAside(this.folder, JOURNAL, this.experiment);
    this.lock.release();
  }

  private end(): void {
    this.syncing.end();
    closeSync(this.fd);
  }

  /** Writes a whole record, or none of it. */
  private write(json: string): void {
    const line = recordLine(json);
    try {
      for (let done = 0; done < line.length; ) done += writeSync(this.fd, line, done);
    } catch (error) {
      ftruncateSync(this.fd, this.length);
      throw error;
    }
    this.length += line.length;
    this.syncing.soon();
  }

  /** Takes the runs that are there; says how many. */
  private goOn(finished: Map<number, Outcome>): string {
    const { runs, twins, procedure } = this.experiment.plan;
    const found = readJournal(this.fd, (there) => {
      const why = whyForeign(there, this.experiment);
      if (why !== null) throw new ForeignJournalError(this.path, why);
      return (run, outcome) => {
        if (run < runs && !finished.has(run)) finished.set(run, readOutcome(outcome));
      };
    });
    if (found.experiment === 'other') throw new ForeignJournalError(this.path, 'it is no journal');
    // A cut record goes, so that the next one begins a line.
    this.length = found.length;
    ftruncateSync(this.fd, this.length);
    if (found.experiment === null)
      return `there is nothing in ${this.path} to go on from; the experiment begins at its start`;
    const among = twins ? ', twins among them' : '';
    const of = procedure === undefined ? `${runs}` : `at most ${runs}`;
    const spoilt = found.damaged + (found.torn ? 1 : 0);
    const again = spoilt > 0 ? `; ${spoilt} broken ${spoilt > 1 ? 'records are' : 'record is'} left out` : '';
    return `going on from ${this.path}: ${finished.size} of ${of} runs are there${among}${again}`;
  }
}
