import type { Sampler } from '../kernel/distributions/distribution.ts';
import { exp, square } from '../kernel/elementary.ts';

/** Steps of the grid in the time in which a deviation fades to 37 % of itself. */
const STEPS = 64;

/**
 * A random walk that is pulled back to zero: normal at any time with standard deviation `sd`, correlation
 * exp(-t / pullBack) over t seconds, exact on a grid of times and held between them (AR(1), the Ornstein-Uhlenbeck
 * process seen at regular times). It is a function of time alone, whoever asks and how often.
 * Source: G. E. P. Box and G. M. Jenkins, Time Series Analysis, on first-order autoregressive processes.
 */
export class Wander {
  private readonly step: number;
  private readonly keeps: number;
  private readonly shock: number;
  private readonly z: Sampler;
  private value: number;
  private reached = 0;

  /** @param pullBack s; @param z standard normal, for this purpose alone */
  constructor(sd: number, pullBack: number, z: Sampler) {
    this.step = pullBack / STEPS;
    this.keeps = exp(-1 / STEPS);
    this.shock = sd * Math.sqrt(1 - square(this.keeps));
    this.z = z;
    this.value = sd * z();
  }

  /** The deviation at `now`, s, which must not fall from call to call. */
  at(now: number): number {
    const due = Math.floor(now / this.step);
    for (; this.reached < due; this.reached++) this.value = this.keeps * this.value + this.shock * this.z();
    return this.value;
  }
}
