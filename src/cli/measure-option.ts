import { MEASURES, type MeasureKey } from '../line/measures.ts';
import { suggestion } from '../scenario/nearest.ts';
import { UsageError } from './usage-error.ts';

/**
 * The measure that `--by` names, by its key or its name.
 * @throws UsageError
 */
export function measureOf(by = 'throughput'): MeasureKey {
  const found = MEASURES.find(({ key, name }) => key === by || name === by);
  if (found) return found.key;
  throw new UsageError(`--by "${by}" is no measure${suggestion(by, MEASURES.map(({ name }) => name))}`); // biome-ignore format: one line reads better
}
