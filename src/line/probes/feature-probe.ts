import type { FeatureSpec } from '../../scenario/parts.ts';
import { Sums } from './sums.ts';

/** Looks at the true values of one feature as parts are made. */
export class FeatureProbe {
  readonly values = new Sums();
  /** Parts outside the limits. */
  outside = 0;
  private readonly limits: FeatureSpec['limits'];

  constructor({ limits }: FeatureSpec) {
    this.limits = limits;
  }

  add(value: number): void {
    this.values.add(value);
    if (this.limits !== null && (value < this.limits.lower || value > this.limits.upper)) this.outside++;
  }
}
