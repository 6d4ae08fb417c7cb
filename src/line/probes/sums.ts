import type { RunSpread } from '../../statistics/spread-interval.ts';

/** Mean and variance of values as they come; B. P. Welford (1962), Technometrics 4, 419-420. */
export class Sums {
  count = 0;
  private mean = 0;
  private squares = 0;

  add(value: number): void {
    const off = value - this.mean;
    this.mean += off / ++this.count;
    this.squares += off * (value - this.mean);
  }

  /** Null when there was none. The variance is the mean square deviation from the mean. */
  spread(): RunSpread | null {
    return this.count === 0 ? null : { mean: this.mean, variance: this.squares / this.count };
  }
}
