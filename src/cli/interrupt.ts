import { setImmediate } from 'node:timers/promises';
import { createContext, runInContext } from 'node:vm';
import { InterruptedError } from '../experiment/interrupted.ts';
import { EXIT } from './exit-codes.ts';

const interrupt = new AbortController();
/** How many see to an interrupt themselves just now. */
let heeding = 0;
let said = 'interrupted before any run had finished';

function onInterrupt(): void {
  interrupt.abort();
  if (heeding > 0) return;
  console.error(`mendline: ${said}`);
  process.exit(EXIT.interrupted);
}

/** From here on Ctrl-C is answered. To be called before the command is loaded, which takes its time. A second one ends it at once. */
export function listen(): void {
  process.once('SIGINT', onInterrupt);
}

/** The command is done. */
export function listenNoMore(): void {
  process.off('SIGINT', onInterrupt);
}

/** Does what ends in order by itself once it is interrupted. */
export async function heeded<T>(work: (signal: AbortSignal) => Promise<T>): Promise<T> {
  const abort = () => interrupt.abort();
  process.once('SIGTERM', abort);
  heeding++;
  try {
    return await work(interrupt.signal);
  } finally {
    heeding--;
    process.off('SIGTERM', abort);
  }
}

/** From here on what is left to do is to write down what was found. */
export function runsAreDone(): void {
  said = 'interrupted: all runs had finished, and the report is not written';
}

/**
 * Does what never pauses, such as a run in this thread, so that Ctrl-C ends it all the same. It must not write: it may
 * end anywhere.
 * @throws InterruptedError
 */
export async function breakable<T>(work: () => T): Promise<T> {
  // One that came meanwhile, while something was loaded, is answered first; signals are looked for between these two.
  await setImmediate();
  await setImmediate();
  try {
    return runInContext('work()', createContext({ work }), { breakOnSigint: true }) as T;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ERR_SCRIPT_EXECUTION_INTERRUPTED') throw error;
    throw new InterruptedError({ finished: [], done: 0, most: 1 }, said);
  }
}
