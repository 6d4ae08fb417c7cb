import { crc32 } from 'node:zlib';

const NEWLINE = 0x0a;
const SPACE = 0x20;

/**
 * A record as a line: the length of its JSON in bytes, its CRC-32 (that of zlib and of ISO 3309) in eight hexadecimal
 * digits, the JSON, which has no line break of its own.
 */
export function recordLine(json: string): Buffer {
  const body = Buffer.from(json);
  const sum = crc32(body).toString(16).padStart(8, '0');
  return Buffer.concat([Buffer.from(`${body.length} ${sum} `), body, Buffer.of(NEWLINE)]);
}

/** The JSON of a line, its break left off; null where it is not whole. */
export function readRecord(line: Buffer): string | null {
  const first = line.indexOf(SPACE);
  const second = first + 9;
  if (first < 1 || line[second] !== SPACE) return null;
  const body = line.subarray(second + 1);
  const length = line.toString('latin1', 0, first);
  const sum = line.toString('latin1', first + 1, second);
  if (length !== String(body.length) || sum !== crc32(body).toString(16).padStart(8, '0')) return null;
  return body.toString();
}

/** Whether bytes without a line break could be how a record begins. */
export function beginsRecord(bytes: Buffer): boolean {
  return /^\d*( [0-9a-f]{0,8}( ($|\{.*))?)?$/s.test(bytes.toString('latin1'));
}
