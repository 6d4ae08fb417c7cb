import { experimentOf, type Procedure } from '../experiment/journal/experiment.ts';
import { Journal } from '../experiment/journal/journal.ts';
import type { PolicyModuleFile } from '../experiment/policy-module.ts';
import type { ScenarioFile } from '../experiment/scenario-file.ts';
import type { Task } from '../experiment/worker.ts';
import type { OutputFolder } from '../report/output-folder.ts';
import { EXIT } from './exit-codes.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';

interface Given {
  readonly read: ScenarioFile;
  readonly files: readonly PolicyModuleFile[];
  readonly resume?: boolean | undefined;
}

/** The journal that a command keeps in the folder of its report while its runs are under way. */
export class JournalOfCommand {
  private readonly folder: string;
  private readonly given: Given;
  private journal: Journal | null = null;

  constructor(folder: string, given: Given) {
    this.folder = folder;
    this.given = given;
  }

  /**
   * Opens it for these runs, and says on stderr what was found.
   * @throws ForeignJournalError, JournalInUseError, UnwritableJournalError
   */
  begin(planned: readonly Task[] | Procedure): Journal {
    const { read, files, resume = false } = this.given;
    const sha256 = (one: { readonly sha256: string }) => one.sha256;
    const sources = {
      version: version(),
      scenario: read.sha256,
      supplements: read.supplements.map(sha256),
      modules: files.map(sha256),
    };
    const journal = new Journal(this.folder, { experiment: experimentOf(sources, planned), resume });
    for (const news of journal.news) console.error(`mendline: ${news}.`);
    process.once('exit', (code) => this.end(code));
    this.journal = journal;
    return journal;
  }

  /** The report is written. */
  finish(): void {
    this.journal?.finish();
    this.journal = null;
  }

  /** However the command ends, the lock does not stay, and who could go on is told. A run that failed would do so again. */
  private end(code: number): void {
    if (!this.journal) return;
    const { path, holds } = this.journal;
    this.journal.close();
    if (holds && code !== EXIT.failedRun)
      console.error(
        `mendline: what had finished is kept in ${path}; the same command with --resume goes on from there.`,
      );
  }
}

/** The journal of a command that writes into a folder; none where it writes nowhere. */
export function journalOf(folder: OutputFolder | undefined, given: Given): JournalOfCommand | undefined {
  if (folder) return new JournalOfCommand(folder.path, given);
  if (given.resume) throw new UsageError('--resume goes on in the folder of a report; name it with --out');
  return undefined;
}
