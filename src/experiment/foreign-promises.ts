import { setImmediate } from 'node:timers/promises';

/** A promise of a policy module that failed. */
interface Failed {
  readonly reason: unknown;
}

let failed: Failed | null = null;
let heeded = false;

/**
 * Heeds promises of policy modules that nobody waits for, from the first call on: they belong to contexts of their own,
 * which tells them from those of the program, whose failing is a fault as ever.
 */
export function heedForeignPromises(): void {
  if (heeded) return;
  heeded = true;
  process.on('unhandledRejection', (reason, promise) => {
    if (promise instanceof Promise) throw reason;
    failed ??= { reason };
  });
}

/** The first promise of a policy module that failed since this was asked last; null where none did. */
export async function failedForeignPromise(): Promise<Failed | null> {
  await setImmediate();
  const found = failed;
  failed = null;
  return found;
}
