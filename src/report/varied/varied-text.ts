import { Chalk, type ChalkInstance } from 'chalk';
import type { Varied } from '../../experiment/varied/varied.ts';
import { printable, wrap } from '../columns.ts';
import { type Column, shareLines } from '../table-lines.ts';
import type { TerminalOptions } from '../terminal.ts';
import {
  byGoodness,
  effectColumns,
  pointColumns,
  screenedColumns,
  type TextColumn,
} from './varied-tables.ts';
import { bestText, effectsHeading, factorText, measureOf, tellingRows, variedNotes } from './varied-words.ts';

/** So many settings are shown; vary.csv has them all. */
const SHOWN = 12;

/** A heading of a place that is long breaks at its last key. */
const inTwo = (heading: string) => (heading.length > 12 ? heading.replace(/\/([^/]*)$/, '/\n$1') : heading);

const columnsOf = (columns: readonly TextColumn[]): Column[] =>
  columns.map(({ heading, side, cells }) => ({
    heading: inTwo(printable(heading)),
    side,
    cells: cells.map(printable),
  }));

function effectLines(varied: Varied, ink: ChalkInstance, width: number): string[] {
  const { effects } = varied;
  if (effects.kind === 'none') return [];
  const columns =
    effects.kind === 'screened'
      ? screenedColumns(varied, effects.rows)
      : effectColumns(varied, tellingRows(effects.rows));
  return shareLines({ title: effectsHeading(varied), columns: columnsOf(columns) }, ink, width);
}

function settingLines(varied: Varied, ink: ChalkInstance, width: number): string[] {
  if (varied.design.kind === 'screen') return [];
  const all = varied.design.points.length;
  const shown = all > SHOWN ? byGoodness(varied).slice(0, SHOWN) : varied.estimates.map((_, i) => i);
  const which = all > SHOWN ? `the best ${SHOWN} of ${all} settings` : 'each setting';
  const title = `${measureOf(varied)} (${varied.measure.better} is better), ${which}`;
  return shareLines({ title, columns: columnsOf(pointColumns(varied, shown)) }, ink, width);
}

/** What was varied, what that does, what came out, and what the numbers mean. */
export function variedText(varied: Varied, { title, colour, width }: TerminalOptions): string {
  const ink = new Chalk({ level: colour ? 1 : 0 });
  const best = varied.design.kind === 'screen' ? [] : [...wrap(printable(bestText(varied)), width), ''];
  return [
    ...wrap(printable(title), width).map((line) => ink.bold(line)),
    '',
    ...varied.factors.flatMap((factor) => wrap(printable(factorText(factor)), width, '  ')),
    '',
    ...effectLines(varied, ink, width),
    ...settingLines(varied, ink, width),
    ...best,
    ...variedNotes(varied).flatMap((note) => wrap(printable(note), width).map((line) => ink.dim(line))),
    '',
  ].join('\n');
}
