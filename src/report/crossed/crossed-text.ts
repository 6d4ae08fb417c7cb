import { Chalk } from 'chalk';
import type { Crossed } from '../../experiment/crossed.ts';
import { printable, wrap } from '../columns.ts';
import { type Column, shareLines } from '../table-lines.ts';
import type { TerminalOptions } from '../terminal.ts';
import { bestOf, changesText, crossedNotes, measureOf } from './crossed-words.ts';

/** Who is best where, then where that changes, then what the marks mean. */
export function crossedText(crossed: Crossed, { title, colour, width }: TerminalOptions): string {
  const ink = new Chalk({ level: colour ? 1 : 0 });
  const { found, severities, measure } = crossed;
  const columns: Column[] = [
    { heading: 'case', side: 'left', cells: found.map(({ name }) => printable(name)) },
    ...severities.map(
      (severity, k): Column => ({
        heading: `severity ${severity}`,
        side: 'left',
        cells: found.map(({ cells }) => printable(bestOf(cells[k]!))),
      }),
    ),
  ];
  const changes = found.flatMap((one) => {
    const text = `${printable(one.name)}: ${printable(changesText(one, crossed))}`;
    return wrap(text, width, '  ');
  });
  return [
    ...wrap(printable(title), width).map((line) => ink.bold(line)),
    '',
    ...shareLines(
      { title: `best in ${measureOf(crossed)} (${measure.better} is better)`, columns },
      ink,
      width,
    ),
    ...(severities.length > 1 ? [ink.bold('best up to which severity'), ...changes, ''] : []),
    ...crossedNotes(crossed).flatMap((note) => wrap(printable(note), width).map((line) => ink.dim(line))),
    '',
  ].join('\n');
}
