import type { Chart } from './chart.ts';

export interface CusumSpec {
  readonly chart: 'cusum';
  /** What is taken from each deviation before it is summed up: half the shift to be found, sigmas. */
  readonly slack: number;
  /** The sum beyond which it signals, sigmas. */
  readonly limit: number;
  /** Share of the limit at which the sums start. */
  readonly headStart: number;
  /** Whether it looks for shifts upwards, downwards or both. */
  readonly side: 'up' | 'down' | 'both';
}

/**
 * Sums up what deviations exceed the slack by, upwards and downwards each by itself, never below zero.
 * Sources: E. S. Page (1954), Biometrika 41, 100-115; head start: J. M. Lucas and R. B. Crosier (1982),
 * Technometrics 24, 199-205.
 */
export class Cusum implements Chart {
  private readonly slack: number;
  private readonly limit: number;
  private readonly start: number;
  private readonly ups: boolean;
  private readonly downs: boolean;
  private up: number;
  private down: number;

  constructor({ slack, limit, headStart, side }: CusumSpec) {
    this.slack = slack;
    this.limit = limit;
    this.start = headStart * limit;
    this.ups = side !== 'down';
    this.downs = side !== 'up';
    this.up = this.start;
    this.down = this.start;
  }

  next(value: number): boolean {
    this.up = Math.max(0, this.up + value - this.slack);
    this.down = Math.max(0, this.down - value - this.slack);
    return (this.ups && this.up > this.limit) || (this.downs && this.down > this.limit);
  }

  restart(): void {
    this.up = this.start;
    this.down = this.start;
  }
}
