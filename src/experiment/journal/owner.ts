import { readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';

/** A process that writes a journal. */
export interface Owner {
  readonly pid: number;
  /** The machine, and the world of processes on it, in which `pid` means something. */
  readonly host: string;
  readonly world: string | null;
  /** What tells it from a later process of the same number; null where the system does not say. */
  readonly birth: string | null;
  readonly since: string;
}

function told<T>(ask: () => T): T | null {
  try {
    return ask();
  } catch {
    return null;
  }
}

const DEAD = ['Z', 'X'];

/** When a process was born, in ticks since a boot that is named; `dead` where it has ended and was not collected; null where Linux is not there to ask. */
function birthOf(pid: number): string | null {
  return told(() => {
    const stat = readFileSync(`/proc/${pid}/stat`, 'latin1');
    // The name may hold anything; behind it stand the third field and those after it (proc(5)).
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    if (DEAD.includes(fields[0]!)) return 'dead';
    return `${readFileSync('/proc/sys/kernel/random/boot_id', 'latin1').trim()} ${fields[19]}`;
  });
}

const world = () => told(() => readlinkSync('/proc/self/ns/pid'));

export const thisProcess = (): Owner => ({
  pid: process.pid,
  host: hostname(),
  world: world(),
  birth: birthOf(process.pid),
  since: new Date().toISOString(),
});

/** Whether a process still runs; null where that cannot be told from here. */
export function runs({ pid, birth, ...place }: Owner): boolean | null {
  if (place.host !== hostname() || place.world !== world()) return null;
  try {
    // Signal 0 asks and does nothing.
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return false;
  }
  const now = birthOf(pid);
  return now === null || birth === null ? now !== 'dead' : now === birth;
}
