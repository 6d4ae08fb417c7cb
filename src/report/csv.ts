import { MEASURES } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import { STATES } from '../line/state.ts';
import { COUNT_KEYS } from './count-keys.ts';

export type Cell = string | number | null | undefined;

export interface Column {
  readonly name: string;
  readonly of: (outcome: Outcome) => Cell;
}

/** Names in the order in which they first appear, each once. */
function namesIn(
  outcomes: readonly Outcome[],
  key: 'stateShares' | 'stockOutShares' | 'crewBusyShares' | 'did',
): string[] {
  return [...new Set(outcomes.flatMap((outcome) => Object.keys(outcome[key] ?? {})))];
}

/** A column for each measure, count and share that there is, in keyed units. */
export function columnsFor(outcomes: readonly Outcome[]): Column[] {
  return [
    { name: 'policy', of: ({ policy }) => policy },
    { name: 'seed', of: ({ seed }) => seed },
    ...MEASURES.map(({ key }): Column => ({ name: key, of: ({ measures }) => measures[key] })),
    ...COUNT_KEYS.map(
      ([count, key]): Column => ({ name: `count_${key}`, of: ({ counts }) => counts[count] }),
    ),
    ...namesIn(outcomes, 'stateShares').flatMap((station) =>
      STATES.map(
        (state): Column => ({
          name: `share_${station}_${state}`,
          of: ({ stateShares }) => stateShares[station]?.[state],
        }),
      ),
    ),
    ...namesIn(outcomes, 'stockOutShares').map(
      (stock): Column => ({
        name: `stock_out_share_${stock}`,
        of: ({ stockOutShares }) => stockOutShares[stock],
      }),
    ),
    ...namesIn(outcomes, 'crewBusyShares').map(
      (crew): Column => ({
        name: `crew_busy_share_${crew}`,
        of: ({ crewBusyShares }) => crewBusyShares[crew],
      }),
    ),
    ...namesIn(outcomes, 'did').map(
      (what): Column => ({ name: `did_${what}`, of: ({ did }) => did?.[what] }),
    ),
    { name: 'events', of: ({ events }) => events },
  ];
}

/**
 * Where a spreadsheet may take what follows for a formula: at the beginning, and behind what parts fields or lines where
 * a comma does not. After OWASP, "CSV Injection"; the wide signs count as the narrow ones in some languages.
 */
const FIRST = /^(?=[=+\-@\uFF1D\uFF0B\uFF0D\uFF20\t\r\n])/;
const BEHIND = /([;\t\r\n])(?=[=+\-@\uFF1D\uFF0B\uFF0D\uFF20])/g;

/** One field by RFC 4180. Text that a spreadsheet would run as a formula gets an apostrophe before it; a number never does. */
function field(cell: Cell): string {
  if (cell === null || cell === undefined) return '';
  if (typeof cell === 'number') return String(cell);
  const text = cell.replace(FIRST, "'").replace(BEHIND, "$1'");
  return /[",;\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

const line = (row: readonly Cell[]): string => `${row.map(field).join(',')}\r\n`;

/** A heading and its rows by RFC 4180, line by line. */
export function* csvLines(
  names: readonly string[],
  rows: Iterable<readonly Cell[]>,
): Generator<string, void, undefined> {
  yield line(names);
  for (const row of rows) yield line(row);
}

/** The same as one text. */
export const csvText = (names: readonly string[], rows: readonly (readonly Cell[])[]): string =>
  [...csvLines(names, rows)].join('');

/** One row a run, in keyed units, with every digit; an empty field where the run gives no value. */
export function runsCsv(outcomes: readonly Outcome[]): string {
  const columns = columnsFor(outcomes);
  return csvText(
    columns.map(({ name }) => name),
    outcomes.map((outcome) => columns.map(({ of }) => of(outcome))),
  );
}
