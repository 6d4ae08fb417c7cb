import { Chalk } from 'chalk';
import type { Selection } from '../../experiment/selection/select.ts';
import { printable, wrap } from '../columns.ts';
import { type Column, shareLines } from '../table-lines.ts';
import type { TerminalOptions } from '../terminal.ts';
import {
  behindText,
  besideOf,
  conclusionOf,
  courseOf,
  formatOfSelection,
  measureOf,
  notesOf,
  rowsOf,
} from './selection-words.ts';

/** How far behind each is, or where the procedure tells it with an interval, how far from the best of the others. */
function comparedWith(selection: Selection): Column[] {
  const format = formatOfSelection(selection);
  const beside = besideOf(selection);
  if (beside.length === 0)
    return [
      { heading: 'behind', side: 'right', cells: rowsOf(selection).map((row) => behindText(row, format)) },
    ];
  return [
    { heading: 'to the\nbest other', side: 'right', cells: beside.map(({ value }) => format.signed(value)) },
    { heading: 'interval', side: 'right', cells: beside.map(format.interval) },
  ];
}

/** What is chosen and what is stated of it, every policy, who went when, and by what it went. */
export function selectionText(selection: Selection, { title, colour, width }: TerminalOptions): string {
  const ink = new Chalk({ level: colour ? 1 : 0 });
  const rows = rowsOf(selection);
  const format = formatOfSelection(selection);
  const columns: Column[] = [
    { heading: 'policy', side: 'left', cells: rows.map(({ policy }) => printable(policy)) },
    { heading: '', side: 'left', cells: rows.map(({ standing }) => standing) },
    { heading: 'runs', side: 'right', cells: rows.map(({ runs }) => String(runs)) },
    ...comparedWith(selection),
    {
      heading: `mean of\nfirst ${selection.settings.firstStage}`,
      side: 'right',
      cells: rows.map(({ first }) => format.value(first.value)),
    },
    { heading: 'interval', side: 'right', cells: rows.map(({ first }) => format.interval(first)) },
  ];
  const lines = (texts: readonly string[]) =>
    texts.flatMap((text) => [...wrap(printable(text), width, '  '), '']);
  return [
    ...wrap(printable(title), width).map((line) => ink.bold(line)),
    '',
    ...lines(conclusionOf(selection)),
    ...shareLines({ title: measureOf(selection), columns }, ink, width),
    ...courseOf(selection).flatMap((text) => wrap(printable(text), width, '  ')),
    ...(selection.standing.out.length > 0 ? [''] : []),
    ...notesOf(selection).flatMap((text) => wrap(printable(text), width).map((line) => ink.dim(line))),
    '',
  ].join('\n');
}
