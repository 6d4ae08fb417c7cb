import type { Estimate } from '../estimate.ts';
import { meanInterval } from '../mean-interval.ts';

/** What one level of a factor, or two levels of two factors together, do to a measure. */
export interface LevelEffect {
  /** The factors by number from 0, with the level of each. */
  readonly at: readonly { readonly factor: number; readonly level: number }[];
  /**
   * One level: the mean over all points with it less that over all. Two: the mean over all points with both, less what the
   * effects of each and the mean over all come to.
   */
  readonly effect: Estimate;
}

/**
 * Main effects and interactions of two factors in a full factorial of any numbers of levels, with t intervals over seeds, each of
 * which gives one value of each effect. The sums of effects over the levels of a factor are zero. D. C. Montgomery, Design and Analysis of
 * Experiments, chapter 5.
 * @param points by point and factor, numbers of levels; every combination once
 * @param values by point and seed, the seeds in the same order at all points
 * @param comparisons how many intervals are to hold together
 */
export function levelEffects(
  points: readonly (readonly number[])[],
  values: readonly (readonly number[])[],
  level: number,
  comparisons = 1,
): LevelEffect[] {
  const seeds = values[0]?.length ?? 0;
  if (seeds === 0 || values.length !== points.length || values.some((own) => own.length !== seeds))
    throw new RangeError('effects need values of every point under every seed');
  const factors = points[0]!.map((_, factor) => Math.max(...points.map((row) => row[factor]!)) + 1);
  if (points.length !== factors.reduce((product, n) => product * n, 1))
    throw new RangeError('effects of levels need every combination of levels once');
  type At = LevelEffect['at'];
  /** By seed, the mean over the points with these levels. */
  const means = (at: At): number[] => {
    const chosen = values.filter((_, point) =>
      at.every(({ factor, level }) => points[point]![factor] === level),
    );
    return Array.from(
      { length: seeds },
      (_, seed) => chosen.reduce((sum, own) => sum + own[seed]!, 0) / chosen.length,
    );
  };
  const all = means([]);
  const single = factors.flatMap((n, factor) => Array.from({ length: n }, (_, level) => ({ factor, level })));
  const alone = new Map(single.map((one) => [one, means([one])]));
  const effects: { at: At; bySeed: number[] }[] = single.map((one) => ({
    at: [one],
    bySeed: alone.get(one)!.map((x, seed) => x - all[seed]!),
  }));
  for (const one of single)
    for (const other of single)
      if (one.factor < other.factor) {
        const [row, column] = [alone.get(one)!, alone.get(other)!];
        const bySeed = means([one, other]).map((x, seed) => x - row[seed]! - column[seed]! + all[seed]!);
        effects.push({ at: [one, other], bySeed });
      }
  return effects.map(({ at, bySeed }) => ({ at, effect: meanInterval(bySeed, level, comparisons) }));
}
