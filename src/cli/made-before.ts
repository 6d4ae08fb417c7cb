import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { NAMED } from '../report/documents.ts';
import { recordIn } from '../report/record.ts';
import { type Recorded, recordedIn } from '../report/recorded.ts';
import { listed } from '../report/words.ts';
import { UsageError } from './usage-error.ts';

const PAGE = '.html';

/** An output that records how it was made. */
export interface Document {
  /** What it is to be called when it is made again. */
  readonly name: string;
  readonly recorded: Recorded;
}

/** What is to be made again. */
export interface MadeBefore {
  readonly documents: readonly Document[];
  /** The folder of the report; null where one file of it is named. */
  readonly folder: string | null;
  /** That file, as it will be called; null where a folder is named. */
  readonly file: string | null;
}

function readDocument(path: string): Document {
  const recorded = recordedIn(readFileSync(path));
  if (typeof recorded === 'string') throw new UsageError(`${path} cannot be rerun: ${recorded}`);
  const own = basename(path);
  const page = extname(own).toLowerCase() === PAGE ? own : `page${PAGE}`;
  return { recorded, name: recorded.file ?? (recorded.kind.goesTo === 'file' ? page : own) };
}

/** The documents of a folder: those with names of their own, and pages that say what they were made from. */
function documentsIn(folder: string): Document[] {
  const pages = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isFile() && extname(entry.name).toLowerCase() === PAGE)
    .map(({ name }) => name)
    .sort()
    .filter((name) => recordIn(readFileSync(join(folder, name))) !== undefined);
  return [...NAMED.filter((name) => existsSync(join(folder, name))), ...pages].map((name) =>
    readDocument(join(folder, name)),
  );
}

/** A file that says nothing of itself belongs to what the documents beside it say. */
function besideOf(path: string): MadeBefore {
  const documents = documentsIn(dirname(path)).filter(({ recorded }) => recorded.kind.goesTo === 'folder');
  if (documents.length === 0)
    throw new UsageError(
      `${path} cannot be rerun: it does not say what it was made from, and beside it there is none of ${listed(NAMED)}`,
    );
  return { documents, folder: null, file: basename(path) };
}

/**
 * What a folder or a file says of how it was made; several commands may have written into one folder.
 * @throws UsageError
 */
export function madeBefore(report: string): MadeBefore {
  if (!existsSync(report))
    throw new UsageError(`${report}: there is no such report; name a folder, such as reports/tray-cell`);
  if (statSync(report).isDirectory()) {
    const documents = documentsIn(report);
    if (documents.length > 0) return { documents, folder: report, file: null };
    throw new UsageError(
      `${report}: in this folder there is none of ${listed(NAMED)}, and no page that says what it was made from`,
    );
  }
  if (recordIn(readFileSync(report)) === undefined) return besideOf(report);
  const document = readDocument(report);
  return { documents: [document], folder: null, file: document.name };
}
