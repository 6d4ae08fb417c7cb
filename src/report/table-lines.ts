import type { ChalkInstance } from 'chalk';
import { cut, padLeft, padRight, widthOf } from './columns.ts';

export interface Column {
  readonly heading: string;
  readonly side: 'left' | 'right';
  readonly cells: readonly string[];
}

const GAP = 2;
/** A first column narrower than this cuts most names. */
const LEAST_FIRST = 12;

function widthOfColumn({ heading, cells }: Column): number {
  return Math.max(...[heading, ...cells].flatMap((text) => text.split('\n')).map(widthOf));
}

/** The columns as one table, or as several with the same first column where one would be too wide. */
function blocks([first, ...others]: readonly Column[], width: number): Column[][] {
  const room = width - Math.min(widthOfColumn(first!), LEAST_FIRST);
  const made: Column[][] = [];
  let left = 0;
  for (const column of others) {
    const needed = widthOfColumn(column) + 1;
    if (made.length === 0 || left < needed) {
      made.push([first!]);
      left = room;
    }
    made.at(-1)!.push(column);
    left -= needed;
  }
  return made;
}

interface Table {
  /** One line, or two where some heading is in two. */
  readonly heading: readonly string[];
  readonly body: readonly string[];
}

/**
 * Lines of a table without frames. A heading and a cell may have several lines, but for a cell of the first column. That is cut
 * to what the others leave of `width`; where that would be very little, they move closer together.
 */
export function tableLines(
  columns: readonly Column[],
  width: number,
  paint: (cell: string) => string,
): Table {
  const headings = columns.map(({ heading }) => heading.split('\n'));
  const high = Math.max(...headings.map((lines) => lines.length));
  const widths = columns.map(widthOfColumn);
  const others = (gap: number) => widths.slice(1).reduce((sum, own) => sum + own + gap, 0);
  const gap = width - others(GAP) < Math.min(widths[0]!, LEAST_FIRST) ? 1 : GAP;
  widths[0] = Math.min(widths[0]!, Math.max(6, width - others(gap)));
  const line = (cell: (column: Column, i: number) => string, painted: (text: string) => string) =>
    columns
      .map((column, i) => {
        const text = i === 0 ? cut(cell(column, i), widths[0]!) : cell(column, i);
        const last = i === columns.length - 1;
        if (column.side === 'right') return painted(padLeft(text, widths[i]!));
        return painted(last ? text : padRight(text, widths[i]!));
      })
      .join(' '.repeat(gap))
      .trimEnd();
  const rows = columns[0]!.cells.flatMap((_, row) => {
    const broken = columns.map(({ cells }) => cells[row]!.split('\n'));
    const lines = Math.max(...broken.map((cell) => cell.length));
    return Array.from({ length: lines }, (_, at) => line((_, i) => broken[i]![at] ?? '', paint));
  });
  const heading = Array.from({ length: high }, (_, row) =>
    line(
      (_, i) => headings[i]![row - high + headings[i]!.length] ?? '',
      (text) => text,
    ),
  );
  return { heading, body: rows };
}

/** A table under a heading of its own, in several parts where it is too wide. */
export function shareLines(
  { title, columns }: { readonly title: string; readonly columns: readonly Column[] },
  ink: ChalkInstance,
  width: number,
): string[] {
  const tables = blocks(columns, width).map((block) => tableLines(block, width, (cell) => cell));
  return [
    ink.bold(title),
    ...tables.flatMap(({ heading, body }) => [...heading.map((line) => ink.dim(line)), ...body, '']),
  ];
}
