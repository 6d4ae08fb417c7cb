import jstat from 'jstat';
import type { Estimate } from './estimate.ts';
import { meanInterval } from './mean-interval.ts';

/** How often something came up in one run. */
export interface RunShare {
  readonly hits: number;
  readonly of: number;
}

/** The exact interval for a share of independent trials; C. J. Clopper and E. S. Pearson (1934), Biometrika 26, 404-413. */
function exact(hits: number, of: number, outside: number): [number, number] {
  const { ibetainv } = jstat.jStat;
  return [
    hits === 0 ? 0 : ibetainv(outside / 2, hits, of - hits + 1),
    hits === of ? 1 : ibetainv(1 - outside / 2, hits + 1, of - hits),
  ];
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
  const [lower, upper] = exact(sum('hits'), sum('of'), (1 - level) / comparisons);
  return {
    ...found,
    lower: Math.max(0, Math.min(found.lower, lower)),
    upper: Math.min(1, Math.max(found.upper, upper)),
    method: `${found.method}, at least exact`,
  };
}
