import { WIDTH } from './charts.ts';
import { wrap } from './columns.ts';
import { escapeHtml } from './escape.ts';
import { type Origin, originRows } from './origin.ts';

/** A chart as the page holds it, with what the page says around it. */
interface Chart {
  readonly svg: string;
  readonly title: string;
  /** What its signs mean, in words. */
  readonly key: string;
  /** Colours with the letters and words for them; none where it has none. */
  readonly legend?: readonly {
    readonly colour: string;
    readonly ink: string;
    readonly letter: string;
    readonly word: string;
  }[];
}

const INK = '#1d2326';
const SOFT = '#525b60';
const PAPER = '#ffffff';
const FONT = 'Helvetica, Arial, sans-serif';
/** px. */
const MARGIN = 12;
const TITLE = { line: 18, letters: 44 };
const KEY = { line: 14, letters: 60 };
const ENTRY = { line: 18, width: 113, across: 3 };

/** Without what XML cannot hold: control characters, and halves of characters. */
const sound = (text: string): string => text.replace(/[^\t\n\P{Cc}]|[\p{Cs}\uFFFE\uFFFF]/gu, ' ');

/** The chart in colours of its own, to be put into another. */
const inner = (svg: string, y: number): string =>
  svg
    .replace(/^<svg role="img" aria-label="[^"]*" style="[^"]*"/, () => `<svg x="${MARGIN}" y="${y}"`)
    .replace(/<style>.*?<\/style>/s, '')
    .replace(/font-size="10" font-family="[^"]*"/, () => 'font-size="12"')
    .replaceAll('="currentColor"', () => `="${INK}"`)
    .replaceAll('="var(--paper, #fff)"', () => `="${PAPER}"`);

const sizeOf = (svg: string): number => Number(/ height="(\d+(?:\.\d+)?)"/.exec(svg)![1]);
const toldBy = (svg: string): string => /aria-label="([^"]*)"/.exec(svg)![1]!;

/** The chart as a file that stands by itself: fonts, colours, a title, what its signs mean, and where it comes from. */
export function svgFile({ svg, title, key, legend = [] }: Chart, origin: Origin): string {
  const line = (text: string, y: number, style: string) =>
    `<text x="${MARGIN}" y="${y}" ${style}>${escapeHtml(text)}</text>`;
  const titles = wrap(title, TITLE.letters);
  const keys = wrap(key, KEY.letters);
  const top = MARGIN + titles.length * TITLE.line;
  const below = top + sizeOf(svg) + 8;
  const entries = legend.map(({ colour, ink, letter, word }, i) => {
    const x = MARGIN + (i % ENTRY.across) * ENTRY.width;
    const y = below + Math.floor(i / ENTRY.across) * ENTRY.line;
    return (
      `<rect x="${x}" y="${y}" width="18" height="14" fill="${colour}" stroke="${INK}" stroke-width="0.5"/>` +
      `<text x="${x + 9}" y="${y + 11}" fill="${ink}" text-anchor="middle">${escapeHtml(letter)}</text>` +
      `<text x="${x + 24}" y="${y + 11}">${escapeHtml(word)}</text>`
    );
  });
  const under = below + Math.ceil(legend.length / ENTRY.across) * ENTRY.line;
  const width = WIDTH + 2 * MARGIN;
  const height = under + keys.length * KEY.line + MARGIN;
  const file = `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="title told" font-family="${FONT}" font-size="11" fill="${INK}">
<title id="title">${escapeHtml(title)}</title>
<desc id="told">${toldBy(svg)}</desc>
<metadata>
${originRows(origin)
  .map(([name, value]) => escapeHtml(`${name}: ${value}`))
  .join('\n')}
</metadata>
<style>text { white-space: pre; }</style>
<rect width="100%" height="100%" fill="${PAPER}"/>
${titles.map((text, i) => line(text, MARGIN + 10 + i * TITLE.line, 'font-size="13" font-weight="600"')).join('\n')}
${inner(svg, top)}
${entries.join('\n')}
${keys.map((text, i) => line(text, under + 11 + i * KEY.line, `fill="${SOFT}"`)).join('\n')}
</svg>
`;
  return sound(file);
}
