import { linkSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
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

/** Names the process in a lock's name; of a lock that says nothing, the same for all. */
const nameOf = (owner: Owner | null) => (owner ? `${owner.pid}-${Date.parse(owner.since)}` : 'unknown');

/**
 * Sees to it that one process alone writes a file. Who finds the lock of a dead process leaves it there and makes one
 * behind it, named after the dead: only one can, whereas a lock that is removed and made anew may be the next one's.
 */
export class Lock {
  /** The locks of the dead and the own behind them. */
  private paths: string[] = [];

  /** @throws JournalInUseError, UnwritableJournalError */
  constructor(path: string) {
    const own = `${JSON.stringify(thisProcess())}\n`;
    while (!this.take(path, own));
  }

  /** False where another took or gave back meanwhile, so that it is to be tried anew. */
  private take(path: string, own: string): boolean {
    const dead: { readonly path: string; readonly text: string }[] = [];
    let at = path;
    while (!made(at, own)) {
      const text = textAt(at);
      if (text === null) return false;
      const owner = ownerIn(text);
      const running = owner ? runs(owner) : false;
      if (owner && running !== false) throw new JournalInUseError(path, inUse(owner, at, running));
      dead.push({ path: at, text });
      at = `${at}.${nameOf(owner)}`;
    }
    // Whoever was behind the dead may have given back all of them since they were looked at.
    if (dead.some((one) => textAt(one.path) !== one.text)) {
      rmSync(at, { force: true });
      return false;
    }
    this.paths = [...dead.map((one) => one.path), at];
    return true;
  }

  /** The first one goes first: who comes meanwhile takes that, and not one behind it. */
  release(): void {
    for (const path of this.paths.splice(0)) rmSync(path, { force: true });
  }
}

function inUse({ pid, host, since }: Owner, path: string, running: true | null): string {
  return running
    ? `process ${pid} has been writing runs here since ${since}; wait for its end, end it, or name another folder with --out`
    : `process ${pid} on ${host} began to write runs here at ${since}, and it cannot be told from here whether it still does; if it does not, delete ${path}`;
}
