import { Chalk } from 'chalk';
import type { Sized } from '../../experiment/sizing/sized.ts';
import { printable, wrap } from '../columns.ts';
import { shareLines } from '../table-lines.ts';
import type { TerminalOptions } from '../terminal.ts';
import { configurationRows, meanRows, type RowColumn, stepRows, tradeOff } from './sized-rows.ts';
import { sizedNotes, sizedVerdict } from './sized-words.ts';

/** The choice and what holds of it, what steps buy, the trade-off, and what it all rests on. */
export function sizedText(sized: Sized, { title, colour, width }: TerminalOptions): string {
  const ink = new Chalk({ level: colour ? 1 : 0 });
  const table = (title: string, columns: readonly RowColumn[]) => {
    if (columns.length === 0) return [];
    const safe = columns.map((one) => ({ ...one, cells: one.cells.map(printable) }));
    return shareLines({ title, columns: safe }, ink, width);
  };
  const at = sized.chosen ? 'the choice' : 'what seems best';
  const verdict = sizedVerdict(sized).flatMap((text) => [...wrap(printable(text), width, '  '), '']);
  const curve = tradeOff(sized);
  return [
    ...wrap(printable(`${title}: ${sized.name}`), width).map((line) => ink.bold(line)),
    '',
    ...verdict,
    ...table(`means of ${at}`, meanRows(sized)),
    ...table(`one step more or less than ${at}`, stepRows(sized)),
    ...(curve.length > 0
      ? table(`cheapest found for each level of ${sized.targets[0]!.name}`, configurationRows(sized, curve))
      : []),
    ...sizedNotes(sized).flatMap((note) => wrap(printable(note), width).map((line) => ink.dim(line))),
    '',
  ].join('\n');
}
