import type { Estimate } from '../statistics/estimate.ts';

/** A predicted value beside the simulated one. */
export interface Compared {
  /** Null where there is no closed form. */
  readonly predicted: number | null;
  /** Null where no run gave a value. */
  readonly simulated: Estimate | null;
  /** Whether the prediction lies outside what the runs allow; null where they give no interval or nothing is predicted. */
  readonly differs: boolean | null;
}

/** An interval at a level, of several that are to hold together; null where no run gave a value. */
type Interval = (level: number, comparisons: number) => Estimate | null;

/** Values this near each other, of the larger one, differ by rounding alone. */
const ROUNDING = 1e-9;

function outside(predicted: number, { lower, upper }: Estimate): boolean | null {
  if (lower === null || upper === null) return null;
  const slack = ROUNDING * Math.max(Math.abs(predicted), Math.abs(lower), Math.abs(upper));
  return predicted < lower - slack || predicted > upper + slack;
}

/** Holds predictions against runs, so that all its verdicts hold together at one level. */
export class Judge {
  /** Coverage of the intervals that are shown, and of those that decide, all together. */
  readonly shown: number;
  readonly deciding: number;
  private readonly open: { value: { differs: boolean | null }; predicted: number; interval: Interval }[] = [];

  constructor(shown: number, deciding: number) {
    this.shown = shown;
    this.deciding = deciding;
  }

  /** How many values are judged together. */
  get comparisons(): number {
    return this.open.length;
  }

  /** How many of them differ; after `settle`. */
  get differing(): number {
    return this.open.filter(({ value }) => value.differs).length;
  }

  /** A value to be judged; its verdict is there after `settle`. */
  compare(predicted: number | null, interval: Interval): Compared {
    const value = { predicted, simulated: interval(this.shown, 1), differs: null };
    if (value.simulated && predicted !== null) this.open.push({ value, predicted, interval });
    return value;
  }

  /** Gives the verdicts, now that it is known how many there are. */
  settle(): void {
    for (const { value, predicted, interval } of this.open)
      value.differs = outside(predicted, interval(this.deciding, this.comparisons)!);
  }
}
