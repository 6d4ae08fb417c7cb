/** A value with the interval that says how sure it is. */
export interface Estimate {
  readonly value: number;
  /** Ends of the interval; null where the runs are too few to give any. */
  readonly lower: number | null;
  readonly upper: number | null;
  /** Coverage the interval is made for, such as 0.95. */
  readonly level: number;
  /** Number of runs behind it. */
  readonly runs: number;
  readonly method: string;
}

/** The interval cut to the values that there can be, which covers the true value no less often. */
export function possible(
  estimate: Estimate,
  {
    least = Number.NEGATIVE_INFINITY,
    most = Number.POSITIVE_INFINITY,
  }: { least?: number | undefined; most?: number | undefined },
): Estimate {
  const { lower, upper } = estimate;
  if (lower === null || upper === null) return estimate;
  return { ...estimate, lower: Math.max(least, lower), upper: Math.min(most, upper) };
}
