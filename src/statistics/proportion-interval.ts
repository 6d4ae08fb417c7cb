import jstat from 'jstat';
import type { Estimate } from './estimate.ts';
import { normalPoint } from './normal.ts';

const { ibetainv } = jstat.jStat;

/** @throws RangeError unless 0 <= hits <= of, whole numbers, and there is a trial */
function shareOf(hits: number, of: number): number {
  if (!Number.isInteger(hits) || !Number.isInteger(of) || hits < 0 || hits > of || of === 0)
    throw new RangeError(`${hits} of ${of} is no count of hits among one or more trials`);
  return hits / of;
}

/** The ends of the exact interval that leaves `outside` to both sides together. */
export function exactEnds(hits: number, of: number, outside: number): [number, number] {
  return [
    hits === 0 ? 0 : ibetainv(outside / 2, hits, of - hits + 1),
    hits === of ? 1 : ibetainv(1 - outside / 2, hits + 1, of - hits),
  ];
}

/**
 * The exact interval for the probability of a hit in independent trials, one a run: it never covers less often than its
 * level, and mostly more. C. J. Clopper and E. S. Pearson (1934), Biometrika 26, 404-413.
 */
export function exactProportion(hits: number, of: number, level: number): Estimate {
  const value = shareOf(hits, of);
  const [lower, upper] = exactEnds(hits, of, 1 - level);
  return { value, lower, upper, level, runs: of, method: 'exact (Clopper-Pearson)' };
}

/**
 * The score interval for the same: it covers about as often as its level says, more for some probabilities and less for
 * others. E. B. Wilson (1927), J. Am. Stat. Assoc. 22, 209-212.
 */
export function wilsonProportion(hits: number, of: number, level: number): Estimate {
  const value = shareOf(hits, of);
  const square = normalPoint((1 + level) / 2) ** 2;
  const middle = (hits + square / 2) / (of + square);
  const half = Math.sqrt(square * (value * (1 - value) * of + square / 4)) / (of + square);
  // At the ends the interval begins at 0 or 1 exactly, which rounding might miss.
  const lower = hits === 0 ? 0 : middle - half;
  const upper = hits === of ? 1 : middle + half;
  return { value, lower, upper, level, runs: of, method: 'Wilson' };
}

/** The probability of a hit that so many trials without any still allow, one-sided: the case of no hits in the exact interval. */
export const boundWithoutHits = (trials: number, level: number): number => 1 - (1 - level) ** (1 / trials);

/** How many trials without any hit show at `level` that a hit is at most this probable, 0 < share < 1. */
export const trialsWithoutHits = (share: number, level: number): number =>
  Math.ceil(Math.log(1 - level) / Math.log(1 - share));
