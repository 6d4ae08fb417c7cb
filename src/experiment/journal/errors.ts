import { whyUnwritten } from '../write-failures.ts';

/** There is a journal that does not belong to this experiment, or none that could be read. */
export class ForeignJournalError extends Error {
  constructor(path: string, why: string) {
    super(
      `${path} cannot be gone on from: ${why}; give the command that it was begun with, leave out --resume to put it aside and begin anew, or name another folder with --out`,
    );
    this.name = 'ForeignJournalError';
  }
}

/** Another process writes this journal. */
export class JournalInUseError extends Error {
  constructor(path: string, why: string) {
    super(`${path}: ${why}`);
    this.name = 'JournalInUseError';
  }
}

/** The journal cannot be read or written; whole runs that are in it stay there. */
export class UnwritableJournalError extends Error {
  constructor(path: string, cause: unknown) {
    super(`${path}: ${whyUnwritten(cause)}; mend that, or choose another folder with --out FOLDER`);
    this.name = 'UnwritableJournalError';
  }
}
