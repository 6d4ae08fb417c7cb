import type { FeatureSpec } from '../scenario/parts.ts';
import type { ReadingSpec } from '../scenario/readings.ts';
import { thermalMovement } from '../standards/thermal-expansion.ts';

/** How much larger a part reads for being warm, mm; negative for a cold one. */
export const readWarm = ({ warmBy = 0 }: ReadingSpec, { aim, expands = 0 }: FeatureSpec): number =>
  thermalMovement(aim, expands, warmBy);

/** What every reading of the feature is off by, mm: what the gauge adds, and what the warmth of the part does. */
export const readingBias = (reading: ReadingSpec, feature: FeatureSpec): number =>
  reading.bias + readWarm(reading, feature);
