import { closeSync, fdatasync, fdatasyncSync, fsyncSync, openSync } from 'node:fs';

/** How long what was written may wait for the disk itself, ms. */
const WAIT = 1000;

/**
 * Has what is written to a file put on the disk itself a second later at most, beside other work: to wait for the disk
 * after each record would cost more than many a run.
 */
export class Syncing {
  /** What went wrong with it, if anything did. */
  failure: unknown = null;
  private readonly fd: number;
  private timer: NodeJS.Timeout | null = null;
  private waiting = false;

  constructor(fd: number) {
    this.fd = fd;
  }

  /** Something was written. */
  soon(): void {
    this.waiting = true;
    this.timer ??= setTimeout(() => {
      this.timer = null;
      fdatasync(this.fd, (error) => {
        this.failure ??= error;
      });
    }, WAIT).unref();
  }

  /** Waits for what was written since. */
  now(): void {
    if (!this.waiting) return;
    this.end();
    fdatasyncSync(this.fd);
  }

  end(): void {
    if (this.timer) clearTimeout(this.timer);
    this.timer = null;
    this.waiting = false;
  }
}

/** Has the names in a folder put on the disk, where the system lets a folder be opened. */
export function syncFolder(path: string): void {
  try {
    const fd = openSync(path, 'r');
    fsyncSync(fd);
    closeSync(fd);
  } catch {
    // The file itself is there; only a power cut within the next seconds could undo its name.
  }
}
