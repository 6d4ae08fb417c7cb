import { printable } from './columns.ts';
import { settingOf } from './latex-columns.ts';
import { escaped } from './latex-signs.ts';
import { originRows } from './origin.ts';
import type { Paper, PaperTable } from './paper-tables.ts';

/** @param broken whether the first cell may take several lines, which are not spread out to fill them */
const line = (cells: readonly string[], broken: boolean): string =>
  `${broken ? '\\raggedright ' : ''}${cells.map(escaped).join(' & ')} \\\\`;

function table({ key, caption, headings, sides, rows, notes }: PaperTable): string {
  const { before, first, broken } = settingOf([headings, ...rows]);
  const others = sides.slice(1).map((side) => side[0]);
  return [
    '\\begin{table}[htbp]',
    '\\centering',
    `\\caption{${escaped(caption)}}`,
    `\\label{tab:${key.replaceAll('_', '-')}}`,
    ...(before ? [before] : []),
    `\\begin{tabular}{${[first, ...others].join('')}}`,
    '\\hline',
    line(headings, broken),
    '\\hline',
    ...rows.map((row) => line(row, broken)),
    '\\hline',
    '\\end{tabular}',
    ...notes.map((note) => `\\par\\smallskip{\\footnotesize ${escaped(note)}\\par}`),
    '\\end{table}',
  ].join('\n');
}

/** The tables of the comparison for `\input` into a LaTeX document. They need no package. */
export function latex({ title, verdict, tables, basis, origin }: Paper): string {
  const comment = (text: string) => `% ${printable(text)}`;
  return [
    comment(title),
    ...originRows(origin).map(([name, value]) => comment(`${name}: ${value}`)),
    comment('Tables for \\input; they need no package.'),
    ...verdict.map(comment),
    comment(basis),
    '',
    tables.map(table).join('\n\n'),
    '',
  ].join('\n');
}
