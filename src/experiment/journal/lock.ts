import { linkSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { JournalInUseError, UnwritableJournalError } from './errors.ts';
import { type Owner, runs, thisProcess } from './owner.ts';

/** File systems that know no second name for a file. */
const NO_LINKS = ['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK'];

/** Makes a file that was not there, with all its content at once; false where there is one. */
function made(path: string, content: string): boolean {
  const draft = `${path}.${process.pid}.part`;
  try {
    writeFileSync(draft, content);
    try {
      linkSync(draft, path);
    } catch (error) {
      if (!NO_LINKS.includes((error as NodeJS.ErrnoException).code ?? '')) throw error;
      writeFileSync(path, content, { flag: 'wx' });
    }
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw new UnwritableJournalError(path, error);
  } finally {
    rmSync(draft, { force: true });
  }
}

/** Null where there is none. */
function textAt(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw new UnwritableJournalError(path, error);
  }
}

/** Null where the text names no process, as when who wrote it was killed meanwhile. */
function ownerIn(text: string): Owner | null {
  try {
    return JSON.parse(text) as Owner;
  } catch {
    return null;
  }
}

/** Names the process in the name of the lock behind its own. */
const nameOf = (owner: Owner | null) => (owner ? `${owner.pid}-${Date.parse(owner.since)}` : 'unknown');

/**
 * Sees to it that one process alone writes a file. Who finds the lock of a dead process makes one behind it, named after
 * the dead, which only one can, and then puts its own in the place of the first. To remove a dead lock and make it anew
 * would not do: it may be another's by then.
 */
export class Lock {
  private readonly path: string;

  /** @throws JournalInUseError, UnwritableJournalError */
  constructor(path: string) {
    this.path = path;
    const own = `${JSON.stringify(thisProcess())}\n`;
    while (!this.take(own));
  }

  /** False where another took or gave back meanwhile, so that it is to be tried anew. */
  private take(own: string): boolean {
    const dead: { readonly path: string; readonly text: string }[] = [];
    let at = this.path;
    while (!made(at, own)) {
      const text = textAt(at);
      if (text === null) return false;
      const owner = ownerIn(text);
      const running = owner ? runs(owner) : false;
      if (owner && running !== false) throw new JournalInUseError(this.path, inUse(owner, at, running));
      dead.push({ path: at, text });
      at = `${this.path}.${dead.length}-${nameOf(owner)}`;
    }
    if (dead.length === 0) return true;
    // Whoever was behind the dead may have taken their place since they were looked at.
    const still = dead.every((one) => textAt(one.path) === one.text);
    if (still) {
      try {
        renameSync(at, this.path);
      } catch (error) {
        throw new UnwritableJournalError(this.path, error);
      }
      this.clear();
    } else rmSync(at, { force: true });
    return still;
  }

  /** Removes what is behind the first: dead ones, and those of who will see that the place is taken. */
  private clear(): void {
    const behind = `${basename(this.path)}.`;
    for (const name of readdirSync(dirname(this.path)))
      if (name.startsWith(behind) && /^\d+-[^.]+$/.test(name.slice(behind.length)))
        rmSync(join(dirname(this.path), name), { force: true });
  }

  release(): void {
    rmSync(this.path, { force: true });
  }
}

function inUse({ pid, host, since }: Owner, path: string, running: true | null): string {
  return running
    ? `process ${pid} has been writing runs here since ${since}; wait for its end, end it, or name another folder with --out`
    : `process ${pid} on ${host} began to write runs here at ${since}, and it cannot be told from here whether it still does; if it does not, delete ${path}`;
}
