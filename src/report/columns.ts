/** Takes out control characters, so that a name from a file cannot steer the terminal. */
export function printable(text: string): string {
  return text.replace(/\p{Cc}+/gu, ' ');
}

const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/u;

function widthOfCharacter(character: string): number {
  if (/\p{Mn}|\p{Cf}/u.test(character)) return 0;
  return WIDE.test(character) ? 2 : 1;
}

/** Columns that `text` takes on a terminal. */
export function widthOf(text: string): number {
  return [...text].reduce((sum, character) => sum + widthOfCharacter(character), 0);
}

/** Cut to `width` columns; the last one is an ellipsis where something was cut. */
export function cut(text: string, width: number): string {
  if (widthOf(text) <= width) return text;
  let kept = '';
  let used = 0;
  for (const character of text) {
    used += widthOfCharacter(character);
    if (used > width - 1) break;
    kept += character;
  }
  return `${kept}\u2026`;
}

export function padRight(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - widthOf(text)));
}

export function padLeft(text: string, width: number): string {
  return ' '.repeat(Math.max(0, width - widthOf(text))) + text;
}

/** Breaks at spaces into lines of at most `width` columns; lines after the first begin with `indent`. */
export function wrap(text: string, width: number, indent = ''): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const joined = line.trim() === '' ? line + word : `${line} ${word}`;
    if (widthOf(joined) <= width) {
      line = joined;
      continue;
    }
    if (line.trim() !== '') lines.push(line);
    line = lines.length > 0 ? indent + word : word;
    // A word longer than a line is cut into pieces rather than let stick out.
    while (widthOf(line) > width) {
      const piece = cut(line, width).slice(0, -1);
      lines.push(piece);
      line = indent + line.slice(piece.length);
    }
  }
  if (line.trim() !== '') lines.push(line);
  return lines;
}
