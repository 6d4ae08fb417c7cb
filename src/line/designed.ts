import type { FeatureSpec } from '../scenario/parts.ts';
import { partFrom } from '../standards/shrinkage.ts';

/** The middle of a feature as designed: its aim, or the mould less the shrinkage, mm. */
export function designed({ mould, shrinkage, aim }: FeatureSpec): number {
  return mould === undefined ? aim : partFrom(mould, shrinkage);
}
