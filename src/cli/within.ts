import { readQuantity } from '../scenario/units.ts';
import { UsageError } from './usage-error.ts';

/**
 * The time that `--within` names, s; without end where it names none.
 * @param usual where it is not given
 * @throws UsageError
 */
export function secondsWithin(within: string | undefined, usual: number): number {
  if (within === undefined) return usual;
  if (within === 'none') return Number.POSITIVE_INFINITY;
  const found = readQuantity(within);
  if (found?.dimension === 'time' && found.value > 0) return found.value;
  throw new UsageError(`--within "${within}" is no time; it expects one above 0 such as "10 min", or none`);
}
