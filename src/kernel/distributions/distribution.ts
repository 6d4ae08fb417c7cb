import type { Stream } from '../streams.ts';

/** Draws one value each time it is called. */
export type Sampler = () => number;

/** Writes the next draws into `values`, in their order. */
export type Fill = (values: Float64Array) => void;

/** What every distribution offers. `Parameters` are unit-free numbers that the scenario has already checked. */
export interface Distribution<Parameters> {
  mean(parameters: Parameters): number;
  /** Square of the standard deviation. */
  variance(parameters: Parameters): number;
  /** Draws block after block with the numbers of `stream`, in a loop of its own. */
  fill(parameters: Parameters, stream: Stream): Fill;
}
