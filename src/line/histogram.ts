/** Bins between two limits, and on either side of them. */
export const INSIDE = 24;
export const OUTSIDE = 24;
const BINS = INSIDE + 2 * OUTSIDE;

/** Limits, mm. */
export interface Limits {
  readonly lower: number;
  readonly upper: number;
}

/** The edges of bins depend on limits alone, so that counts of runs and policies can be added up, bin by bin; a limit is an edge. */
export function edgesOf({ lower, upper }: Limits): { readonly from: number; readonly width: number } {
  const width = (upper - lower) / INSIDE;
  return { from: lower - OUTSIDE * width, width };
}

/** Counts values in bins of equal width; no value is kept. */
export class Histogram {
  /** By bin; the first and the last hold what lies beyond all others. */
  readonly counts: number[] = new Array<number>(BINS + 2).fill(0);
  private readonly from: number;
  private readonly width: number;

  constructor(limits: Limits) {
    const { from, width } = edgesOf(limits);
    this.from = from;
    this.width = width;
  }

  add(value: number): void {
    const bin = Math.floor((value - this.from) / this.width);
    this.counts[Math.min(Math.max(bin, -1), BINS) + 1]!++;
  }
}
