import type { Stream } from '../streams.ts';

/** Draws one value each time it is called. */
export type Sampler = () => number;

/** What every distribution offers. `Parameters` are unit-free numbers that the scenario has already checked. */
export interface Distribution<Parameters> {
  mean(parameters: Parameters): number;
  /** Square of the standard deviation. */
  variance(parameters: Parameters): number;
  sampler(parameters: Parameters, stream: Stream): Sampler;
}
