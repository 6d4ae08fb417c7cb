import { square } from '../elementary.ts';
import type { Stream } from '../streams.ts';
import type { Distribution, Fill } from './distribution.ts';

/** Blocks of the stream's own numbers. */
export const uniformBlocks =
  (stream: Stream): Fill =>
  (values) => {
    for (let i = 0; i < values.length; i++) values[i] = stream();
  };

export const uniform: Distribution<{ readonly low: number; readonly high: number }> = {
  mean: ({ low, high }) => (low + high) / 2,
  variance: ({ low, high }) => square(high - low) / 12,
  fill:
    ({ low, high }, stream) =>
    (values) => {
      for (let i = 0; i < values.length; i++) values[i] = low + (high - low) * stream();
    },
};
