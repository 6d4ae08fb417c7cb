import { MEASURES } from '../line/measures.ts';
import { suggestion } from '../scenario/nearest.ts';
import { UsageError } from './usage-error.ts';

export type Known = (typeof MEASURES)[number];

/**
 * The measure that an option names by its key or its name.
 * @param option what messages call it
 * @throws UsageError
 */
export function measureNamed(word: string, option: string): Known {
  const found = MEASURES.find(({ key, name }) => word === key || word === name);
  if (found) return found;
  const names = MEASURES.map(({ name }) => name);
  throw new UsageError(`${option} "${word}" is no measure${suggestion(word, names)}`);
}
