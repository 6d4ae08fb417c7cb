import { printable } from './columns.ts';
import { originRows } from './origin.ts';
import type { Paper, PaperTable } from './paper-tables.ts';

/** Text as it may stand within a line of Markdown, for what it is. */
const escaped = (text: string): string =>
  printable(text)
    .replace(/[\\`*_[\]|~$#]/g, '\\$&')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;');

/** The same at the beginning of a line, where a number, a plus or a hyphen would make a list. */
const begun = (text: string): string =>
  escaped(text)
    .replace(/^\s*([-+])/, '\\$1')
    .replace(/^\s*(\d+)([.)])/, '$1\\$2');

const row = (cells: readonly string[]): string => `| ${cells.map(escaped).join(' | ')} |`;

function table({ caption, headings, sides, rows, notes }: PaperTable): string {
  const rule = sides.map((side) => (side === 'right' ? '---:' : ':---'));
  const lines = [row(headings), `| ${rule.join(' | ')} |`, ...rows.map(row)];
  return [`## ${escaped(caption)}`, lines.join('\n'), ...notes.map(begun)].join('\n\n');
}

/** The comparison as Markdown with the tables of GitHub's flavour, which most readers of Markdown take. */
export function markdown({ title, verdict, tables, basis, origin }: Paper): string {
  const parts = [
    `# ${escaped(title)}`,
    verdict.map((sentence) => `- ${begun(sentence)}`).join('\n'),
    ...tables.map(table),
    begun(basis),
    '## Provenance',
    originRows(origin)
      .map(([name, value]) => `- ${escaped(name)}: ${escaped(value)}`)
      .join('\n'),
  ];
  return `${parts.join('\n\n')}\n`;
}
