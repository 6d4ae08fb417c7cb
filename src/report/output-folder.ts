import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { whyUnwritten } from '../experiment/write-failures.ts';

/** What `--out` names of a command. */
type Asked = 'folder' | 'file';

/** The folder for the report cannot be written. */
export class UnwritableError extends Error {
  constructor(folder: string, cause: unknown, what: Asked) {
    super(`${folder}: ${whyUnwritten(cause)}; choose another ${what} with --out ${what.toUpperCase()}`);
    this.name = 'UnwritableError';
  }
}

/**
 * Makes the folder and those above it, one by one: asked to do it by itself, Node may never return on odd file systems.
 * @returns those that were not there
 */
function makeFolder(path: string): string[] {
  if (existsSync(path)) {
    if (statSync(path).isDirectory()) return [];
    throw Object.assign(new Error(`${path} is a file`), { code: 'ENOTDIR' });
  }
  const above = makeFolder(dirname(path));
  mkdirSync(path);
  return [...above, path];
}

/** Text or bytes by pieces, so that all of it need not be in memory at once. */
export type Pieces = Generator<string | Uint8Array>;

/** Characters of text that are written at once: a piece by itself may be a line. */
const AT_ONCE = 1_000_000;

function writePieces(path: string, pieces: Pieces): void {
  const fd = openSync(path, 'w');
  let text = '';
  const write = () => {
    if (text !== '') writeFileSync(fd, text);
    text = '';
  };
  try {
    for (const piece of pieces) {
      if (typeof piece === 'string') text += piece;
      if (typeof piece !== 'string' || text.length > AT_ONCE) write();
      if (typeof piece !== 'string') writeFileSync(fd, piece);
    }
    write();
  } finally {
    closeSync(fd);
  }
}

/** A folder that reports go to. Each file appears whole or not at all. */
export class OutputFolder {
  readonly path: string;
  private readonly made: readonly string[];
  private readonly asked: Asked;

  /** Makes the folder if need be and tries to write in it, so that a bad place is known before any run. */
  constructor(path: string, asked: Asked = 'folder') {
    this.path = path;
    this.asked = asked;
    try {
      this.made = makeFolder(path);
    } catch (error) {
      throw new UnwritableError(path, error, asked);
    }
    const probe = this.write('.mendline-probe', '');
    rmSync(probe);
  }

  /** A folder that was tried and is left as it was before, so that what is refused later leaves none; the first file makes it. */
  static tried(path: string, asked: Asked = 'folder'): OutputFolder {
    const folder = new OutputFolder(path, asked);
    for (const made of folder.made.toReversed()) rmdirSync(made);
    return folder;
  }

  /** Writes a file, which may be one in a folder of this one, and returns its path. */
  write(name: string, content: string | Uint8Array | Pieces): string {
    const path = join(this.path, name);
    const draft = `${path}.${process.pid}.part`;
    try {
      makeFolder(dirname(path));
      if (typeof content === 'string' || content instanceof Uint8Array) writeFileSync(draft, content);
      else writePieces(draft, content);
      renameSync(draft, path);
    } catch (error) {
      if (existsSync(draft)) rmSync(draft);
      throw new UnwritableError(this.path, error, this.asked);
    }
    return path;
  }

  remove(name: string): void {
    rmSync(join(this.path, name), { force: true });
  }

  /** Removes the files of a folder of this one whose names match, and that folder if nothing else is in it. */
  removeAll(folder: string, names: RegExp): void {
    const path = join(this.path, folder);
    if (!existsSync(path) || !statSync(path).isDirectory()) return;
    const there = readdirSync(path);
    const doomed = there.filter((name) => names.test(name));
    for (const name of doomed) rmSync(join(path, name), { force: true });
    if (doomed.length > 0 && doomed.length === there.length) rmdirSync(path);
  }
}
