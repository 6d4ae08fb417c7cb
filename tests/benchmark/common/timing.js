// How the benchmark measures: whole processes, repeated in turns, medians.
import { spawn } from 'node:child_process';
import { text } from 'node:stream/consumers';

/** The middle value; of an even number of values the upper of the two in the middle. */
export const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** Mean and its standard error. */
export function meanOf(values) {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, error: Math.sqrt(squares / (values.length - 1) / values.length) };
}

/** Least and largest, relative to the median: how steady a measurement was. */
export function spread(values) {
  const middle = median(values);
  return `${(Math.min(...values) / middle).toFixed(2)} to ${(Math.max(...values) / middle).toFixed(2)} of it`;
}

/** Runs a program to its end. Returns what it wrote and how long the whole process took, s. */
export async function program(command, args, options = {}) {
  const begun = performance.now();
  const child = spawn(command, args, { ...options, stdio: ['ignore', 'pipe', 'pipe'] });
  const ended = new Promise((resolve, reject) => child.once('error', reject).once('close', resolve));
  const [code, out, err] = await Promise.all([ended, text(child.stdout), text(child.stderr)]);
  if (code !== 0) throw new Error(`${[command, ...args].join(' ')} ended with ${code}: ${err.trim()}`);
  return { out, seconds: (performance.now() - begun) / 1000 };
}

/**
 * Takes several measurements in turns (a, b, a, b, ...), so that what else the machine does meets all alike.
 * @param takes functions by name, each given the number of the round (from 1)
 * @returns for each name the list of what its rounds gave
 */
export async function inTurns(rounds, takes) {
  const found = Object.fromEntries(Object.keys(takes).map((name) => [name, []]));
  for (let round = 1; round <= rounds; round++) {
    for (const [name, take] of Object.entries(takes)) found[name].push(await take(round));
  }
  return found;
}
