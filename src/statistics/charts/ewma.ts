import type { Chart } from './chart.ts';

export interface EwmaSpec {
  readonly chart: 'ewma';
  /** Weight of the newest point, above 0 and up to 1. */
  readonly weight: number;
  /** Its limits, in its own sigmas once many points are in it. */
  readonly limit: number;
}

/** The standard deviation of a running mean of independent points, in theirs. Source: S. W. Roberts (1959). */
export const ewmaSigma = (weight: number): number => Math.sqrt(weight / (2 - weight));

/**
 * A running mean that gives the newest point a weight and all before it the rest, from the centre on. Its limits
 * do not change. Source: S. W. Roberts (1959), Technometrics 1, 239-250.
 */
export class Ewma implements Chart {
  /** The running mean, in sigmas of a point from the centre. */
  mean = 0;
  private readonly weight: number;
  private readonly most: number;

  constructor({ weight, limit }: EwmaSpec) {
    this.weight = weight;
    this.most = limit * ewmaSigma(weight);
  }

  next(value: number): boolean {
    this.mean = this.weight * value + (1 - this.weight) * this.mean;
    return Math.abs(this.mean) > this.most;
  }

  restart(): void {
    this.mean = 0;
  }
}
