import jstat from 'jstat';
import { normalPoint, normalShare } from './normal.ts';
import type { Moments } from './reading-sums.ts';

/** Between which values a feature is good, in its unit; an end that is not limited is infinite. */
export interface Limits {
  readonly lower: number;
  readonly upper: number;
}

/** `c` by the standard deviation within, from one reading to the next; `p` by that of all; `k` heeds where the mean is. */
export const CAPABILITIES = ['cp', 'cpk', 'pp', 'ppk'] as const;
export type Capability = (typeof CAPABILITIES)[number];

/** The room between the limits in units of 6 sigma; null where a limit or the sigma is missing. */
function room({ lower, upper }: Limits, sd: number | null): number | null {
  const wide = upper - lower;
  return sd !== null && sd > 0 && Number.isFinite(wide) ? wide / (6 * sd) : null;
}

/** The room from the mean to the nearer limit in units of 3 sigma. */
function nearer({ lower, upper }: Limits, mean: number | null, sd: number | null): number | null {
  return mean !== null && sd !== null && sd > 0 ? Math.min(upper - mean, mean - lower) / (3 * sd) : null;
}

/**
 * The capability indices of readings; null where they are too few or without any spread.
 * Source: ISO 22514-2 and any text on quality control, e.g. D. C. Montgomery, Introduction to Statistical Quality
 * Control, chapter 8.
 */
export function capabilityOf(
  { mean, sdWithin, sdOverall }: Moments,
  limits: Limits,
): Record<Capability, number | null> {
  return {
    cp: room(limits, sdWithin),
    cpk: nearer(limits, mean, sdWithin),
    pp: room(limits, sdOverall),
    ppk: nearer(limits, mean, sdOverall),
  };
}

/**
 * The variance of the mean moving range / d2, in sigma^2 / (n - 1), for many readings: from the covariance of
 * neighbouring ranges, (4 / pi) (sqrt(3) / 2 + pi / 12 - 1). J. D. Cryer and T. P. Ryan (1990), Journal of Quality
 * Technology 22, 187-192, give .826 (from memory).
 */
const MOVING_RANGE_VARIANCE =
  (Math.PI / 4) * (2 - 4 / Math.PI + 2 * ((4 / Math.PI) * (Math.sqrt(3) / 2 + Math.PI / 12) - 4 / Math.PI));

/** Degrees of freedom that the standard deviation behind an index is worth, of so many readings. */
function degreesOfFreedom(index: Capability, readings: number): number {
  const within = index === 'cp' || index === 'cpk';
  return within ? (readings - 1) / (2 * MOVING_RANGE_VARIANCE) : readings - 1;
}

/**
 * The two-sided interval of an index by the value that so many normal readings (2 or more) gave. Cp and Pp by the chi-square
 * distribution; Cpk and Ppk by the normal approximation of A. F. Bissell (1990), How reliable is your capability
 * index?, Applied Statistics 39, 331-340.
 */
export function capabilityIntervals(
  index: Capability,
  readings: number,
  level: number,
): (found: number) => Limits {
  const freedom = degreesOfFreedom(index, readings);
  const tail = (1 - level) / 2;
  if (index === 'cp' || index === 'pp') {
    const end = (p: number) => Math.sqrt(jstat.jStat.chisquare.inv(p, freedom) / freedom);
    const [low, high] = [end(tail), end(1 - tail)];
    return (found) => ({ lower: low * found, upper: high * found });
  }
  const z = normalPoint(1 - tail);
  return (found) => {
    const half = z * Math.sqrt(1 / (9 * readings) + found ** 2 / (2 * freedom));
    return { lower: found - half, upper: found + half };
  };
}

/** Parts per million outside two limits, of a normal process with this Cp whose mean is off the middle by `shift` sigmas. */
export function ppmOutside(cp: number, shift = 0): number {
  return 1e6 * (normalShare(-3 * cp - shift) + normalShare(-3 * cp + shift));
}
