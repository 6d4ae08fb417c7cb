import { ReadingSums } from '../reading-sums.ts';

/** Takes a chart's centre and sigma from its first readings: their mean, and the mean moving range / 1.128. */
export class Learner {
  centre = Number.NaN;
  sigma = Number.NaN;
  private readonly sums = new ReadingSums();
  private readonly origin: number;
  private left: number;

  /** @param origin a value near the readings */
  constructor(size: number, origin: number) {
    this.left = size;
    this.origin = origin;
  }

  get done(): boolean {
    return this.left === 0;
  }

  add(value: number): void {
    this.sums.add(value - this.origin);
    if (--this.left > 0) return;
    const { mean, sdWithin } = this.sums.moments(this.origin);
    this.centre = mean!;
    this.sigma = sdWithin!;
  }
}
