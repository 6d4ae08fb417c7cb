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
