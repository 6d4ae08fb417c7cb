import { cut, printable } from './columns.ts';

/** Columns of a line that are shown before and from the first byte that differs. */
const BEFORE = 20;
const SHOWN = 66;

const LINE_END = 10;

const linesBefore = (bytes: Uint8Array, end: number): number =>
  bytes.subarray(0, end).reduce((lines, byte) => lines + (byte === LINE_END ? 1 : 0), 0);

/** What stands around the place, within its line. */
function around(bytes: Uint8Array, place: number): string {
  const start = Math.max(bytes.subarray(0, place).lastIndexOf(LINE_END) + 1, place - BEFORE);
  const end = bytes.indexOf(LINE_END, place);
  const line = bytes.subarray(start, end < 0 ? bytes.length : end).subarray(0, 4 * SHOWN);
  // A character cut in two at the beginning is left out.
  const text = printable(new TextDecoder().decode(line).replace(/^\uFFFD+/, ''));
  return text === '' ? '(nothing)' : cut(text, SHOWN);
}

/**
 * Where two files first differ, in lines of at most 80 columns; null where they hold the same bytes.
 * @param then what the report holds
 * @param now what was made anew
 */
export function firstDifference(then: Uint8Array, now: Uint8Array): string[] | null {
  const shorter = Math.min(then.length, now.length);
  let place = 0;
  while (place < shorter && then[place] === now[place]) place++;
  if (place === then.length && place === now.length) return null;
  if (then.subarray(0, place + 1).includes(0) || now.subarray(0, place + 1).includes(0))
    return [`differs from byte ${place + 1} on; ${then.length} bytes in the report, ${now.length} anew`];
  return [
    `differs from line ${linesBefore(then, place) + 1} on:`,
    `  report: ${around(then, place)}`,
    `  anew:   ${around(now, place)}`,
  ];
}
