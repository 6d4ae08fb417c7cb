import { inBlocks } from '../blocks.ts';
import { normalQuantile } from '../normal-quantile.ts';
import type { Stream } from '../streams.ts';
import type { Distribution, Fill, Sampler } from './distribution.ts';

/** The stream has 32 bits: half a step keeps 0 out. */
const HALF_STEP = 0.5 / 0x1_0000_0000;

/** Fills `values` with standard normal deviates: one uniform a draw, so two runs stay in step. */
export function fillNormal(values: Float64Array, stream: Stream): void {
  for (let i = 0; i < values.length; i++) values[i] = normalQuantile(stream() + HALF_STEP);
}

/** One of them. */
export const normalDeviate = (stream: Stream): number => normalQuantile(stream() + HALF_STEP);

/** Blocks of the normal law with mean 0, by default of standard deviation 1. */
export const normalBlocks =
  (stream: Stream, sd = 1): Fill =>
  (values) => {
    fillNormal(values, stream);
    if (sd !== 1) for (let i = 0; i < values.length; i++) values[i]! *= sd;
  };

/** A sampler of the standard normal law. */
export const standardNormal = (stream: Stream): Sampler => inBlocks(normalBlocks(stream));

export const normal: Distribution<{ readonly mean: number; readonly sd: number }> = {
  mean: ({ mean }) => mean,
  variance: ({ sd }) => sd * sd,
  fill:
    ({ mean, sd }, stream) =>
    (values) => {
      fillNormal(values, stream);
      for (let i = 0; i < values.length; i++) values[i] = mean + sd * values[i]!;
    },
};
