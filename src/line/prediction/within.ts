import { boxProbability, type Range } from '../../statistics/box-probability.ts';
import { shareBelow, shareBetween } from '../../statistics/normal.ts';
import type { Condition } from './model.ts';

/** Points of the lattice over all conditions together, and the fewest and the most for each. */
const POINTS = 160_000;
const FEWEST = 16;
const MOST = 20_011;

/** The probability that all variables keep their limits, over all conditions; exact in each for one variable. */
export function shareWithin(box: readonly Range[], conditions: readonly Condition[]): number {
  const points = Math.min(MOST, Math.max(FEWEST, Math.floor(POINTS / conditions.length)));
  const within = ({ mean, covariance }: Condition, k: number) =>
    box.length === 1
      ? shareBetween(box[0]!.lower, box[0]!.upper, mean[0]!, Math.sqrt(covariance[0]![0]!))
      : boxProbability(box, mean, covariance, points, k * points);
  return conditions.reduce((sum, condition, k) => sum + condition.share * within(condition, k), 0);
}

/** The share of one variable below a limit and above one, over all conditions. */
export const shareUnder = (limit: number, conditions: readonly Condition[]): number =>
  conditions.reduce(
    (sum, { share, mean, covariance }) =>
      sum + share * shareBelow(limit, mean[0]!, Math.sqrt(covariance[0]![0]!)),
    0,
  );

export const shareOver = (limit: number, conditions: readonly Condition[]): number =>
  conditions.reduce(
    (sum, { share, mean, covariance }) =>
      sum + share * shareBelow(-limit, -mean[0]!, Math.sqrt(covariance[0]![0]!)),
    0,
  );
