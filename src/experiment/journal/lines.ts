import { readSync } from 'node:fs';

const CHUNK = 1 << 20;
const NEWLINE = 0x0a;

/** A line of a file without its break, or what stands behind the last break. */
interface Line {
  readonly bytes: Buffer;
  /** Whether a break ends it. */
  readonly ended: boolean;
}

/** The lines of an open file, read piece by piece, as a journal may be larger than memory. Nothing behind the last break is no line. */
export function* linesOf(fd: number): Generator<Line> {
  let rest: Buffer = Buffer.alloc(0);
  for (let at = 0; ; ) {
    const chunk = Buffer.allocUnsafe(CHUNK);
    const read = readSync(fd, chunk, 0, CHUNK, at);
    if (read === 0) break;
    at += read;
    let from = 0;
    const bytes = Buffer.concat([rest, chunk.subarray(0, read)]);
    for (let end = bytes.indexOf(NEWLINE); end >= 0; end = bytes.indexOf(NEWLINE, from)) {
      yield { bytes: bytes.subarray(from, end), ended: true };
      from = end + 1;
    }
    rest = bytes.subarray(from);
  }
  if (rest.length > 0) yield { bytes: rest, ended: false };
}
