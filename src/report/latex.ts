import { printable } from './columns.ts';
import { originRows } from './origin.ts';
import type { Paper, PaperTable } from './paper-tables.ts';

const SIGNS: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '^': '\\textasciicircum{}',
  '~': '\\textasciitilde{}',
  '<': '\\textless{}',
  '>': '\\textgreater{}',
  '|': '\\textbar{}',
  // Behind the end of a row these two would be taken for its options.
  '[': '{[}',
  '*': '{*}',
  // An active sign in some languages.
  '"': '{\\char34}',
  '\u2212': '$-$',
  '\u2013': '--',
  '\u2026': '\\ldots{}',
  '\u00a0': '~',
};

/** Text as it may stand anywhere in a paragraph or a cell, for what it is. */
function escaped(text: string): string {
  return printable(text).replace(
    /[\\^~<>|[*"\u2212\u2013\u2026\u00a0]|[{}$&#_%]|-(?=-)|[`'](?=[`'])|[?!](?=`)/gu,
    (sign) => {
      if ('{}$&#_%'.includes(sign)) return `\\${sign}`;
      return SIGNS[sign] ?? `${sign}{}`;
    },
  );
}

const line = (cells: readonly string[]): string => `${cells.map(escaped).join(' & ')} \\\\`;

function table({ key, caption, headings, sides, rows, notes }: PaperTable): string {
  return [
    '\\begin{table}[htbp]',
    '\\centering',
    `\\caption{${escaped(caption)}}`,
    `\\label{tab:${key.replaceAll('_', '-')}}`,
    `\\begin{tabular}{${sides.map((side) => side[0]).join('')}}`,
    '\\hline',
    line(headings),
    '\\hline',
    ...rows.map(line),
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
