import { normalQuantile } from '../normal-quantile.ts';
import type { Stream } from '../streams.ts';
import type { Distribution, Sampler } from './distribution.ts';

/** A sampler of the standard normal law: one uniform a draw, so two runs stay in step. */
export function standardNormal(stream: Stream): Sampler {
  // The stream has 32 bits: half a step keeps 0 out.
  return () => normalQuantile(stream() + 2 ** -33);
}

export const normal: Distribution<{ readonly mean: number; readonly sd: number }> = {
  mean: ({ mean }) => mean,
  variance: ({ sd }) => sd * sd,
  sampler: ({ mean, sd }, stream) => {
    const z = standardNormal(stream);
    return () => mean + sd * z();
  },
};
