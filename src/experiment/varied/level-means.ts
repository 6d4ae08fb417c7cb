import type { Estimate } from '../../statistics/estimate.ts';
import { meanInterval } from '../../statistics/mean-interval.ts';
import { LEVEL } from '../comparison.ts';
import type { Design } from './design.ts';
import type { Factor } from './factor.ts';

/** What comes out with one level of a factor, or with levels of two, in the mean over all points that have them. */
export interface LevelMean {
  /** By factor from 0, the number of the level. */
  readonly at: readonly { readonly factor: number; readonly level: number }[];
  /** Its interval holds by itself at LEVEL. */
  readonly estimate: Estimate;
}

/**
 * The means by level, and by pairs of levels in all combinations; none of a design without levels.
 * @param values by point and seed
 */
export function levelMeans(
  factors: readonly Factor[],
  { kind, points }: Design,
  values: readonly (readonly number[])[],
): LevelMean[] {
  if (kind === 'latin' || kind === 'screen') return [];
  const single = factors.flatMap(({ levels }, factor) => levels.map((_, level) => ({ factor, level })));
  const pairs =
    kind === 'fraction'
      ? []
      : single.flatMap((one) =>
          single.filter((other) => one.factor < other.factor).map((other) => [one, other]),
        );
  return [...single.map((one) => [one]), ...pairs].map((at) => {
    const chosen = values.filter((_, point) =>
      at.every(({ factor, level }) => points[point]![factor] === factors[factor]!.levels[level]),
    );
    const bySeed = values[0]!.map(
      (_, seed) => chosen.reduce((sum, own) => sum + own[seed]!, 0) / chosen.length,
    );
    return { at, estimate: meanInterval(bySeed, LEVEL) };
  });
}
