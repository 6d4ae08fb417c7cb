import { UnsettledFeature } from '../../line/unsettled.ts';
import type { Disturbing } from '../../scenario/disturbances.ts';
import { both, type Effect, type Making } from '../effect.ts';
import { sized } from '../sized.ts';

/**
 * Moves the mean of a feature, or scales what is a part's own of it: for one that is formed as the sheet is loaded, for
 * one that is trimmed as it is cut. Parts that are made already stay as they are.
 */
export function feature(spec: Disturbing<'feature'>, making: Making): Effect {
  const { calendar, features, parts } = making.line;
  const it = features.get(spec.feature)!;
  const { madeAt } = it.spec;
  it.upset ??= new UnsettledFeature(calendar, parts, it.truth, it.isCut);
  const mean = sized('by', spec.by, 0, [it.upset.mean], making);
  const spread = sized('spread', spec.spread, 1, [it.upset.spread], making);
  return { curedAt: madeAt, ...both(mean, spread) };
}
