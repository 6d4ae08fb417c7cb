import type { Estimate } from './estimate.ts';
import { meanInterval } from './mean-interval.ts';
import { exactEnds } from './proportion-interval.ts';

/** How often something came up in one run. */
export interface RunShare {
  readonly hits: number;
  readonly of: number;
}

/**
 * A share over runs that had at least one trial each, with a cautious interval: Student's t over the runs, which knows that trials of one
 * run go together, widened to the exact interval of as many independent trials, which knows how little a few hits
 * tell. One run gives no interval.
 */
export function shareInterval(runs: readonly RunShare[], level: number, comparisons = 1): Estimate {
  const shares = runs.map(({ hits, of }) => hits / of);
  const found = meanInterval(shares, level, comparisons);
  if (found.lower === null || found.upper === null) return found;
  const sum = (key: keyof RunShare) => runs.reduce((total, run) => total + run[key], 0);
  const [lower, upper] = exactEnds(sum('hits'), sum('of'), (1 - level) / comparisons);
  return {
    ...found,
    lower: Math.max(0, Math.min(found.lower, lower)),
    upper: Math.min(1, Math.max(found.upper, upper)),
    method: `${found.method}, at least exact`,
  };
}
