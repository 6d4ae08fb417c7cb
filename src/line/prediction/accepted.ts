import type { ReadingSpec } from '../../scenario/readings.ts';
import type { Range } from '../../statistics/box-probability.ts';

/** A limit that is a multiple of the resolution may miss it by the rounding of binary numbers alone. */
const OF_A_STEP = 1e-6;

/**
 * Between which values a reading must lie, before it is rounded to the resolution, to be judged good: the limits drawn in by the guard,
 * and moved to where the first and the last step within them begin and end.
 */
export function acceptedReadings({ lower, upper }: Range, { guard, resolution }: ReadingSpec): Range {
  const drawnIn = { lower: lower + guard, upper: upper - guard };
  if (resolution === 0) return drawnIn;
  const first = Math.ceil(drawnIn.lower / resolution - OF_A_STEP);
  const last = Math.floor(drawnIn.upper / resolution + OF_A_STEP);
  const from = (first - 0.5) * resolution;
  return { lower: from, upper: Math.max(from, (last + 0.5) * resolution) };
}
