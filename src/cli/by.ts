import { MEASURES } from '../line/measures.ts';
import { suggestion } from '../scenario/nearest.ts';
import { UsageError } from './usage-error.ts';

/**
 * The measure that `--by` names by its key or its name.
 * @throws UsageError
 */
export function measureBy(by = 'throughput'): (typeof MEASURES)[number] {
  const found = MEASURES.find(({ key, name }) => key === by || name === by);
  if (found) return found;
  throw new UsageError(`--by "${by}" is no measure${suggestion(by, MEASURES.map(({ name }) => name))}`); // biome-ignore format: one line reads better
}
