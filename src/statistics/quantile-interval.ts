import { quantileSorted } from 'simple-statistics';
import type { Estimate } from './estimate.ts';
import { acceptanceProbability } from './operating-characteristic.ts';

/** Two order statistics by their numbers, 1 for the smallest value, and how often the quantile lies between them. */
export interface RankPair {
  readonly lower: number;
  readonly upper: number;
  readonly coverage: number;
}

/** The chance that at most `k` of `n` values lie below the quantile `p`. */
const atMost = (n: number, k: number, p: number): number => (k < 0 ? 0 : acceptanceProbability(n, k, p));

/**
 * How often the order statistics `lower` and `upper` of `n` independent values enclose their quantile `p`, 0 < p < 1, for a
 * continuous law; never less often for any other. H. A. David and H. N. Nagaraja, Order Statistics, section 7.1.
 */
export function rankCoverage(n: number, p: number, lower: number, upper: number): number {
  return atMost(n, upper - 1, p) - atMost(n, lower - 1, p);
}

/**
 * The pair with the fewest ranks from one to the other that covers at least as often as `level` says; among equals the one
 * that covers most. Null where even the smallest and the largest value do not cover so often.
 */
export function rankPair(n: number, p: number, level: number): RankPair | null {
  const below = Array.from({ length: n + 1 }, (_, k) => atMost(n, k - 1, p));
  const coverage = (lower: number, upper: number) => below[upper]! - below[lower]!;
  let best: RankPair | null = null;
  let upper = 2;
  for (let lower = 1; lower < n; lower++) {
    upper = Math.max(upper, lower + 1);
    while (upper < n && coverage(lower, upper) < level) upper++;
    const found = { lower, upper, coverage: coverage(lower, upper) };
    if (found.coverage < level) break;
    const longer = best ? upper - lower - (best.upper - best.lower) : -1;
    if (longer < 0 || (longer === 0 && found.coverage > best!.coverage)) best = found;
  }
  return best;
}

/** Pairs that were asked for: many intervals are of as many values. */
const found = new Map<string, RankPair | null>();

function knownPair(n: number, p: number, level: number): RankPair | null {
  const key = `${n} ${p} ${level}`;
  if (!found.has(key)) found.set(key, rankPair(n, p, level));
  return found.get(key)!;
}

/** The fewest values that give any interval for the quantile `p` at `level`. */
export function fewestForQuantile(p: number, level: number): number {
  let n = 2;
  while (1 - p ** n - (1 - p) ** n < level) n++;
  return n;
}

/**
 * The interval of a quantile, 0 < p < 1, by order statistics of independent values, whatever law they follow. Where the
 * values are too few it has no ends (`fewestForQuantile`).
 * @throws RangeError without any value
 */
export function quantileInterval(values: readonly number[], p: number, level: number): Estimate {
  const runs = values.length;
  if (runs === 0) throw new RangeError('a quantile needs at least one value');
  const sorted = [...values].sort((a, b) => a - b);
  const known = { value: quantileSorted(sorted, p), level, runs };
  const pair = knownPair(runs, p, level);
  if (!pair) return { ...known, lower: null, upper: null, method: 'order statistics, too few runs' };
  return {
    ...known,
    lower: sorted[pair.lower - 1]!,
    upper: sorted[pair.upper - 1]!,
    method: `order statistics ${pair.lower} and ${pair.upper}`,
  };
}
