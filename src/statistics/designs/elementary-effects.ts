import { sampleStandardDeviation } from 'simple-statistics';
import type { Estimate } from '../estimate.ts';
import { meanInterval } from '../mean-interval.ts';

/** A way through the unit cube that changes one factor after the other, each once. */
export interface Trajectory {
  /** By step and factor, one point more than there are factors; values of the grid, from 0 to 1. */
  readonly points: readonly (readonly number[])[];
  /** The factor that each step changes. */
  readonly order: readonly number[];
}

/** What one factor does over its whole range, as changes of it here and there show. */
export interface Screened {
  /** Mean effect, mu. */
  readonly mean: Estimate;
  /** Mean size of the effect, mu*: small for a factor that may be left alone. */
  readonly size: Estimate;
  /** Standard deviation of effects, sigma: it has a bent effect, or goes together with others; null for one trajectory. */
  readonly spread: number | null;
}

/**
 * Random trajectories over a grid of an even number of levels, with steps of levels / (2 (levels - 1)), so that all levels
 * are as likely. M. D. Morris (1991), Factorial sampling plans for preliminary computational experiments, Technometrics 33,
 * 161-174.
 * @param uniform numbers in [0, 1)
 * @throws RangeError for a number of levels that is odd or below 2
 */
export function trajectories(
  factors: number,
  count: number,
  levels: number,
  uniform: () => number,
): Trajectory[] {
  if (levels < 2 || levels % 2 !== 0)
    throw new RangeError(`${levels} levels; elementary effects take an even number of them`);
  const half = levels / 2;
  const whole = (n: number) => Math.floor(uniform() * n);
  return Array.from({ length: count }, () => {
    const start = Array.from({ length: factors }, () => whole(half));
    const up = start.map(() => uniform() < 0.5);
    const order = start.map((_, i) => i);
    for (let i = factors - 1; i > 0; i--) {
      const j = whole(i + 1);
      [order[i], order[j]] = [order[j]!, order[i]!];
    }
    const at = start.map((cell, i) => (up[i] ? cell : cell + half));
    const points = [at.map((cell) => cell / (levels - 1))];
    for (const factor of order) {
      at[factor]! += up[factor] ? half : -half;
      points.push(at.map((cell) => cell / (levels - 1)));
    }
    return { points, order };
  });
}

/**
 * The effects of factors by what came out at the points of trajectories, in the unit of the measure over the whole range of a factor. The
 * trajectories are independent, so the intervals are t intervals over them; those of sizes are cut at 0. mu* by A. Saltelli et al.,
 * Sensitivity Analysis in Practice, and F. Campolongo, J. Cariboni and A. Saltelli (2007), Environ. Model. Softw. 22, 1509-1518.
 * @param values by trajectory and point
 * @returns by factor
 */
export function elementaryEffects(
  ways: readonly Trajectory[],
  values: readonly (readonly number[])[],
  level: number,
): Screened[] {
  const factors = ways[0]?.order.length ?? 0;
  if (values.length !== ways.length || ways.some(({ points }, way) => values[way]!.length !== points.length))
    throw new RangeError('elementary effects need the values of every point of every trajectory');
  const effects = Array.from({ length: factors }, (): number[] => []);
  for (const [way, { points, order }] of ways.entries()) {
    for (const [step, factor] of order.entries()) {
      const moved = points[step + 1]![factor]! - points[step]![factor]!;
      effects[factor]!.push((values[way]![step + 1]! - values[way]![step]!) / moved);
    }
  }
  return effects.map((own) => {
    const size = meanInterval(own.map(Math.abs), level);
    return {
      mean: meanInterval(own, level),
      size: { ...size, lower: size.lower === null ? null : Math.max(0, size.lower) },
      spread: own.length > 1 ? sampleStandardDeviation(own) : null,
    };
  });
}
