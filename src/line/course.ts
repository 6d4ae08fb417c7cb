import type { EpisodeRecord } from './episodes.ts';
import type { Exit } from './exit.ts';

/** How the output of one run went over the counted time. Plain data. */
export interface Course {
  /** Good assemblies that left in each bin, one bin after the other from the end of the warm-up on. */
  readonly good: Uint32Array;
  /** In the order in which they began, those before the end of the warm-up included. */
  readonly episodes: readonly EpisodeRecord[];
}

/** Rounding may put what happens at the end of a bin this far, in bins, beyond it. */
const ROUNDING = 1e-9;

/**
 * Counts what leaves by `exit` from `from`, s, on in so many bins of `width`, s. What leaves at the very end of a bin
 * belongs to it, and what leaves after the last one to none.
 */
export function countInBins(exit: Exit, from: number, width: number, bins: number): Uint32Array {
  const counts = new Uint32Array(bins);
  exit.leaving.push((_row, _stayed, now) => {
    const bin = Math.max(0, Math.ceil((now - from) / width - ROUNDING) - 1);
    if (bin < bins) counts[bin]!++;
  });
  return counts;
}
