/**
 * What a disturbed course lost against the course it would have had. Both are given as amounts in bins of equal width,
 * one after the other and equally many; levels are amounts per bin. Performance is what a rolling window holds, so that
 * single pieces do not count as losses.
 *
 * Sources: M. Bruneau et al. (2003), A framework to quantitatively assess and enhance the seismic resilience of
 * communities, Earthquake Spectra 19, 733-752: resilience loss, robustness, rapidity. G. P. Cimellaro, A. M. Reinhorn
 * and M. Bruneau (2010), Framework for analytical quantification of disaster resilience, Engineering Structures 32,
 * 3639-3649: resilience as a normalised integral.
 */
type Amounts = ArrayLike<number>;

/** Sums over windows of so many bins that lie wholly within the course, by their first bin. */
function sums(amounts: Amounts, window: number): Float64Array {
  const made = new Float64Array(Math.max(0, amounts.length - window + 1));
  let sum = 0;
  for (let i = 0; i < amounts.length; i++) {
    sum += amounts[i]!;
    if (i >= window) sum -= amounts[i - window]!;
    if (i >= window - 1) made[i - window + 1] = sum;
  }
  return made;
}

/** The rolling level: the mean amount per bin over the last `window` bins, from the first whole window on. */
export function rollingLevel(amounts: Amounts, window: number): Float64Array {
  return sums(amounts, window).map((sum) => sum / window);
}

/**
 * The loss triangle: the area between the two rolling levels where the disturbed one is the lower, in amounts. What is
 * made up later is not set against it. Windows that hang over the ends count with what they hold, so that a loss that
 * is nowhere made up is the difference of the two totals.
 */
export function lossOf(own: Amounts, twin: Amounts, window: number): number {
  let short = 0;
  let loss = 0;
  for (let i = 0; i < own.length + window - 1; i++) {
    if (i < own.length) short += twin[i]! - own[i]!;
    if (i >= window) short -= twin[i - window]! - own[i - window]!;
    loss += Math.max(0, short);
  }
  return loss / window;
}

/** Performance over the whole course as a share of the twin's, gains left out; null where the twin has none. */
export function resilienceOf(own: Amounts, twin: Amounts, window: number): number | null {
  let whole = 0;
  for (let i = 0; i < twin.length; i++) whole += twin[i]!;
  return whole > 0 ? 1 - lossOf(own, twin, window) / whole : null;
}

/** The largest shortfall of the rolling level; null where no window is whole. */
export function depthOf(own: Amounts, twin: Amounts, window: number): number | null {
  const before = sums(twin, window);
  if (before.length === 0) return null;
  return sums(own, window).reduce((most, sum, i) => Math.max(most, before[i]! - sum), 0) / window;
}

/** How far below its twin a course may stay and yet count as recovered. */
export interface Tolerance {
  /** Of what the twin has in the same window. */
  readonly share: number;
  /** Amount in a window; the larger of the two holds. */
  readonly least: number;
}

/**
 * The longest time that the rolling level fell short of its twin's, in bins: from the first amount missed in the first
 * window that is short by more than the tolerance to the end of the last one that is. A rolling level goes back over its
 * window, so it is back up to a window later than the level itself. 0 where no window is short; null where the last one
 * still is, so that the recovery was not seen.
 */
export function recoveryOf(
  own: Amounts,
  twin: Amounts,
  window: number,
  { share, least }: Tolerance,
): number | null {
  const before = sums(twin, window);
  const after = sums(own, window);
  let longest = 0;
  /** First bin after the last window that missed nothing. */
  let missedFrom = 0;
  /** First bin of the time under way in which it falls short. */
  let begun: number | null = null;
  for (let i = 0; i < before.length; i++) {
    const missed = before[i]! - after[i]!;
    if (missed > Math.max(share * before[i]!, least)) begun ??= Math.max(i, missedFrom);
    else if (begun !== null) {
      longest = Math.max(longest, i - 1 + window - begun);
      begun = null;
    }
    if (missed <= 0) missedFrom = i + window;
  }
  return begun === null ? longest : null;
}
