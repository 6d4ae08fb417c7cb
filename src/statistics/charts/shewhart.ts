import type { Chart } from './chart.ts';
import { follow, noHistory, type RunRule } from './run-rules.ts';

export interface ShewhartSpec {
  readonly chart: 'shewhart';
  /** Sigmas from the centre beyond which one point signals. */
  readonly limit: number;
  readonly runRules: readonly RunRule[];
}

/** Signals at a point beyond its limits, or by a run rule. Source: W. A. Shewhart (1931). */
export class Shewhart implements Chart {
  private readonly limit: number;
  private readonly rules: readonly RunRule[];
  private readonly history: number[];

  constructor({ limit, runRules }: ShewhartSpec) {
    this.limit = limit;
    this.rules = runRules;
    this.history = noHistory(runRules);
  }

  next(value: number): boolean {
    const byRule = follow(this.rules, this.history, value);
    return byRule || Math.abs(value) > this.limit;
  }

  restart(): void {
    this.history.fill(0);
  }
}
