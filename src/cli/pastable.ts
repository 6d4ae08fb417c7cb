const INDENT = '  ';
/** Columns of a line of help. */
const WIDTH = 78;

/** A command as it is typed, over as many lines as it takes, each but the last with the mark that a shell goes on by. */
export function pastable(command: string): string {
  const lines: string[] = [];
  let line = INDENT;
  for (const word of command.match(/(?:"[^"]*"|[^\s"])+/g) ?? []) {
    if (line.trim() !== '' && line.length + word.length + ' \\'.length > WIDTH) {
      lines.push(`${line}\\`);
      line = INDENT.repeat(2);
    }
    line += `${word} `;
  }
  return [...lines, line.trimEnd()].join('\n');
}
