import jstat from 'jstat';
import { mean, sampleStandardDeviation } from 'simple-statistics';

/**
 * The chance of a mean at least as far from zero as this one, were the true mean zero: the two-sided t test of paired
 * differences, 2 or more. Values without spread are 1 when they are zero, and else 0.
 */
export function chanceOfNone(differences: readonly number[]): number {
  const values = [...differences];
  if (values.length < 2) return 1;
  const [middle, sd] = [mean(values), sampleStandardDeviation(values)];
  if (sd === 0) return middle === 0 ? 1 : 0;
  const t = Math.abs(middle / sd) * Math.sqrt(values.length);
  return 2 * jstat.jStat.studentt.cdf(-t, values.length - 1);
}

/**
 * Chances of several tests, adjusted so that those at or below a level may be called differences together: the chance that
 * any comparison without a difference is called one is then at most that level, however the tests hang together. It finds all that
 * Bonferroni's inequality finds and more, but gives no intervals, and does not bound errors in the direction of true differences in
 * general. S. Holm (1979), A simple sequentially rejective multiple test procedure, Scand. J. Stat. 6, 65-70.
 */
export function holm(chances: readonly number[]): number[] {
  const adjusted = chances.map(() => 0);
  const order = chances.map((_, i) => i).sort((a, b) => chances[a]! - chances[b]!);
  let most = 0;
  for (const [step, i] of order.entries()) {
    most = Math.max(most, Math.min(1, (chances.length - step) * chances[i]!));
    adjusted[i] = most;
  }
  return adjusted;
}
