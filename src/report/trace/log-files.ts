import { EVENTS_FORMAT } from '../documents.ts';
import type { Pieces } from '../output-folder.ts';
import { logRows } from './log-rows.ts';
import { logCsv, logParquet } from './log-table.ts';
import { ORIGIN, ocelText } from './ocel.ts';
import { head, type TraceSource } from './trace-json.ts';

interface LogFile {
  readonly name: string;
  readonly content: Pieces;
}

/** The event log of a run as files: a table twice, and the same in an open standard. */
export function logFiles(source: TraceSource, withTruth: boolean): LogFile[] {
  const rows = logRows(source.trace, withTruth);
  const parquet = 'events.parquet';
  const ocel = 'events.ocel.json';
  const madeFrom = (file: string) => ({ ...head(source, EVENTS_FORMAT), file });
  return [
    { name: 'events.csv', content: logCsv(rows) },
    { name: parquet, content: logParquet(rows, source, madeFrom(parquet)) },
    { name: ocel, content: ocelText(rows, source, madeFrom(ocel)) },
  ];
}

/** Where the files come from, for those that have no place to say it themselves. */
export function logOrigin(source: TraceSource, sha256: Readonly<Record<string, string>>): string {
  const document = {
    ...head(source, EVENTS_FORMAT),
    start_is_called: new Date(ORIGIN).toISOString(),
    files: Object.entries(sha256).map(([file, digest]) => ({ file, sha256: digest })),
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}
