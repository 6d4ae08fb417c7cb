import { mean } from 'simple-statistics';
import type { Estimate } from '../estimate.ts';
import { meanInterval } from '../mean-interval.ts';
import type { Sign } from './two-level-fraction.ts';

/** What one factor, or two together, do to a measure from their low to their high level. */
export interface Effect {
  /** Factors by number from 0: one for a main effect, two for an interaction. */
  readonly factors: readonly number[];
  /** Other interactions, and main effects, that this design cannot tell from it; their effects are in it, those with sign -1 taken off. */
  readonly mixedWith: readonly { readonly factors: readonly number[]; readonly sign: Sign }[];
  /** Mean where the product of the factors is high less that where it is low. */
  readonly effect: Estimate;
}

/**
 * Main effects and interactions of two factors. Each seed gives one value of each effect, so that its interval is the
 * t interval over seeds, which heeds that all points went by the same seeds. Of effects that cannot be told apart the first is
 * listed; main effects come before interactions. Interactions of three and more are taken to be none. G. E. P. Box, J. S. Hunter
 * and W. G. Hunter, Statistics for Experimenters, chapters 5 and 6.
 * @param points by point and factor, of a full factorial or a fraction
 * @param values by point and seed, the seeds in the same order at all points
 * @throws RangeError where a factor does not change, or values are missing
 */
export function twoLevelEffects(
  points: readonly (readonly Sign[])[],
  values: readonly (readonly number[])[],
  level: number,
): Effect[] {
  const factors = points[0]?.length ?? 0;
  const seeds = values[0]?.length ?? 0;
  if (seeds === 0 || values.length !== points.length || values.some((own) => own.length !== seeds))
    throw new RangeError('effects need values of every point under every seed');
  const sets = Array.from({ length: factors }, (_, i) => [i]);
  for (let i = 0; i < factors; i++) for (let j = i + 1; j < factors; j++) sets.push([i, j]);
  const groups = new Map<string, { column: Sign[]; members: { factors: number[]; sign: Sign }[] }>();
  for (const set of sets) {
    const column = points.map((row) => set.reduce<Sign>((product, i) => (product === row[i] ? 1 : -1), 1));
    const sign = column[0]!;
    const key = column.map((own) => (own === sign ? '+' : '-')).join('');
    const group = groups.get(key);
    if (!group) groups.set(key, { column, members: [{ factors: set, sign: 1 }] });
    else group.members.push({ factors: set, sign: sign === group.column[0] ? 1 : -1 });
  }
  const found = [...groups.values()];
  const still = found.find(({ column }) => column.reduce<number>((sum, sign) => sum + sign, 0) !== 0);
  if (still)
    throw new RangeError(
      `the points have not as many high as low levels of factor ${still.members[0]!.factors}`,
    );
  return found.map(({ column, members }) => {
    const half = points.length / 2;
    const bySeed = Array.from(
      { length: seeds },
      (_, seed) => column.reduce<number>((sum, sign, point) => sum + sign * values[point]![seed]!, 0) / half,
    );
    return {
      factors: members[0]!.factors,
      mixedWith: members.slice(1),
      effect: meanInterval(bySeed, level, found.length),
    };
  });
}

/** The mean over all points, by the mean of each seed. */
export function grandMean(values: readonly (readonly number[])[], level: number): Estimate {
  const seeds = values[0]!.map((_, seed) => mean(values.map((own) => own[seed]!)));
  return meanInterval(seeds, level);
}
