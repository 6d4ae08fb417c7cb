import { printable } from './columns.ts';
import { originRows } from './origin.ts';
import type { Paper, PaperTable } from './paper-tables.ts';

/** Text as it may stand anywhere in a line of Markdown, for what it is. */
function escaped(text: string): string {
  return (
    printable(text)
      .replace(/[\\`*_[\]|~$#]/g, '\\$&')
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
      // A number, a plus or a hyphen at the beginning would make a list.
      .replace(/^(\s*)([-+=]|\d+(?=[.)]))/, (_, space: string, sign: string) =>
        /\d/.test(sign) ? `${space}&#${sign.charCodeAt(0)};${sign.slice(1)}` : `${space}\\${sign}`,
      )
  );
}

const row = (cells: readonly string[]): string => `| ${cells.map(escaped).join(' | ')} |`;

function table({ caption, headings, sides, rows, notes }: PaperTable): string {
  const rule = sides.map((side) => (side === 'right' ? '---:' : ':---'));
  const lines = [row(headings), `| ${rule.join(' | ')} |`, ...rows.map(row)];
  return [`## ${escaped(caption)}`, lines.join('\n'), ...notes.map(escaped)].join('\n\n');
}

/** The comparison as Markdown with the tables of GitHub's flavour, which most readers of Markdown take. */
export function markdown({ title, verdict, tables, basis, origin }: Paper): string {
  const parts = [
    `# ${escaped(title)}`,
    verdict.map((sentence) => `- ${escaped(sentence)}`).join('\n'),
    ...tables.map(table),
    escaped(basis),
    '## Provenance',
    originRows(origin)
      .map(([name, value]) => `- ${escaped(name)}: ${escaped(value)}`)
      .join('\n'),
  ];
  return `${parts.join('\n\n')}\n`;
}
