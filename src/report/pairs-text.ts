import type { ChalkInstance } from 'chalk';
import { type Comparison, LEVEL, type MeasureComparison } from '../experiment/comparison.ts';
import { headingOf, percentLevel } from './cells.ts';
import { cut, printable, widthOf, wrap } from './columns.ts';
import { PAIR_HEADINGS, pairCells, pairsNote } from './pair-cells.ts';
import { type Column, tableLines } from './table-lines.ts';
import { painted, stacked } from './verdict-word.ts';

/** A name is not cut to less than this. */
const LEAST_NAME = 8;

const widest = (cells: readonly string[]): number =>
  Math.max(...cells.flatMap((cell) => cell.split('\n')).map(widthOf));

function pairTable(compared: MeasureComparison, ink: ChalkInstance, width: number): string[] {
  const rows = pairCells(compared);
  const [policy, against, ...headings] = PAIR_HEADINGS;
  const numbers = [
    rows.map(({ difference }) => difference),
    rows.map(({ interval }) => interval),
    rows.map(({ chance }) => chance),
    rows.map(({ verdict }) => stacked(verdict)),
  ].map((cells, i): Column => ({ heading: headings[i]!, side: i < 3 ? 'right' : 'left', cells }));
  const taken = numbers.reduce((sum, { heading, cells }) => sum + widest([heading, ...cells]) + 1, 0);
  // The two names share what the numbers leave; the table cuts the first.
  const room = Math.max(LEAST_NAME, Math.floor((width - taken - 1) / 2));
  const columns: Column[] = [
    { heading: policy, side: 'left', cells: rows.map((row) => cut(printable(row.policy), room)) },
    { heading: against, side: 'left', cells: rows.map((row) => cut(printable(row.other), room)) },
    ...numbers,
  ];
  const { heading, body } = tableLines(columns, width, painted(ink));
  return [
    ink.bold(`every pair: ${headingOf(compared)}`),
    ...heading.map((line) => ink.dim(line)),
    ...body,
    '',
  ];
}

/** Every pair of policies in every measure, and what that holds for; nothing where there is no pair. */
export function pairsLines(comparison: Comparison, ink: ChalkInstance, width: number): string[] {
  const { measures, pairComparisons } = comparison;
  if (pairComparisons === 0) return [];
  const note = wrap(pairsNote(pairComparisons, percentLevel(LEVEL)), width);
  return [
    ...measures.flatMap((compared) => pairTable(compared, ink, width)),
    ...note.map((line) => ink.dim(line)),
    '',
  ];
}
