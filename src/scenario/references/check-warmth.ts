import type { FeatureSpec } from '../parts.ts';
import type { Path } from '../problem.ts';
import type { ReadingSpec } from '../readings.ts';
import type { Checker } from './checker.ts';

/** A part that is read warm must be known to grow by it. */
export function checkWarmReading(check: Checker, { name, warmBy }: ReadingSpec, path: Path): void {
  const feature = check.feature(name);
  if (warmBy === undefined || !feature || feature.expands !== undefined) return;
  check.say(
    [...path, 'warm-by'],
    `how "${name}" grows by warmth is not known; give it "expands", such as 0.07 mm/m/°C, or take "warm-by" out`,
  );
}

/** Only gauges go by how a feature grows. */
export function checkExpansion(check: Checker, { name, expands }: FeatureSpec, path: Path): void {
  // A station with problems of its own may be the one that reads it.
  if (expands === undefined || check.stations.size < check.names.stations.length) return;
  const warm = check.raw.stations.some(
    (station) =>
      station.does === 'gauge' &&
      station.measures.some((reading) => reading.name === name && reading.warmBy !== undefined),
  );
  if (!warm)
    check.say(
      [...path, 'expands'],
      `no gauge reads "${name}" warm; give a reading of it "warm-by", or take "expands" out`,
    );
}
