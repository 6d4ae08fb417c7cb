import { MOST_SEEDS } from '../scenario/limits.ts';
import type { Command } from './command.ts';
import { UsageError } from './usage-error.ts';

/** The most that is taken for a whole number: each run and each worker needs memory. */
const MOST: Readonly<Record<string, number>> = {
  seeds: MOST_SEEDS,
  seed: MOST_SEEDS,
  part: 1e9,
  hours: 100_000,
  workers: 256,
  'module-timeout': 3600,
  points: 10_000,
  paths: 5000,
  choices: 10_000,
  'at-most': 100_000,
};

/** An option as the parser names it a second time. */
export const inOneWord = (option: string): string =>
  option.replace(/-+(.)/g, (_, letter: string) => letter.toUpperCase());

/**
 * Refuses an option given twice that may not be, a count that is none, and an empty name.
 * @throws UsageError
 */
export function soundOptions({ options }: Command, given: Readonly<Record<string, unknown>>): true {
  const several = Object.keys(options).filter((key) => options[key]!.array === true);
  const repeatable = new Set([...several, ...several.map(inOneWord)]);
  for (const [key, value] of Object.entries(given)) {
    if (key !== '_' && !repeatable.has(key) && Array.isArray(value))
      throw new UsageError(`--${key} is given more than once`);
  }
  for (const [key, most] of Object.entries(MOST)) {
    const value = given[key];
    if (value === undefined) continue;
    if (!Number.isInteger(value) || (value as number) < 1 || (value as number) > most)
      throw new UsageError(`--${key} expects a whole number from 1 to ${most}`);
  }
  for (const key of several)
    if ((given[key] as readonly string[] | undefined)?.includes(''))
      throw new UsageError(`--${key} expects a value after it`);
  if (given.out === '') throw new UsageError('--out expects a name after it');
  return true;
}
