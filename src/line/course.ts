import type { EpisodeRecord } from './episodes.ts';
import type { Line } from './line.ts';
import type { Looks } from './looks.ts';

/** How the output of one run went over the counted time. Plain data. */
export interface Course {
  /** Good assemblies that left in each bin, one bin after the other from the end of the warm-up on. */
  readonly good: Uint32Array;
  /** In the order in which they began, those before the end of the warm-up included. */
  readonly episodes: readonly EpisodeRecord[];
}

/**
 * Lets the line run from now on through so many bins of `width`, s, not beyond `end`, and counts what leaves as good in
 * each: what leaves at the very end of a bin belongs to it. The clock stops at the end of each bin, so that no part need
 * be looked at.
 */
export function runInBins(
  { calendar, tally }: Line,
  width: number,
  bins: number,
  end: number,
  looks?: Looks,
): Uint32Array {
  const from = calendar.now;
  const counts = new Uint32Array(bins);
  for (let bin = 0; bin < bins; bin++) {
    const before = tally.good;
    // Rounding must not carry the last bin beyond the end.
    calendar.run(Math.min(from + (bin + 1) * width, end));
    counts[bin] = tally.good - before;
    looks?.atEnd(bin);
  }
  return counts;
}
