import type { Condition } from './model.ts';

/** More conditions of one variable than these are gathered, those of like means together. */
const MOST = 200;

/** The same law of one variable in fewer conditions, where there are many: each keeps the mean and the variance of those in it. */
export function gathered(conditions: readonly Condition[]): readonly Condition[] {
  if (conditions.length <= MOST) return conditions;
  const sorted = [...conditions].sort((one, other) => one.mean[0]! - other.mean[0]!);
  const groups: { share: number; sum: number; squares: number; variance: number }[] = [];
  let before = 0;
  for (const { share, mean, covariance } of sorted) {
    const at = Math.min(MOST - 1, Math.floor(before * MOST));
    groups[at] ??= { share: 0, sum: 0, squares: 0, variance: 0 };
    const group = groups[at];
    // Distances from the lowest keep their digits.
    const above = mean[0]! - sorted[0]!.mean[0]!;
    group.share += share;
    group.sum += share * above;
    group.squares += share * above ** 2;
    group.variance += share * covariance[0]![0]!;
    before += share;
  }
  return Object.values(groups).map(({ share, sum, squares, variance }) => {
    const above = sum / share;
    const between = Math.max(0, squares / share - above ** 2);
    return { share, mean: [sorted[0]!.mean[0]! + above], covariance: [[variance / share + between]] };
  });
}
