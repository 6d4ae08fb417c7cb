import type { Distribution } from './distribution.ts';

/** Sampled by inverting its distribution function. */
export const triangular: Distribution<{
  readonly low: number;
  readonly mode: number;
  readonly high: number;
}> = {
  mean: ({ low, mode, high }) => (low + mode + high) / 3,
  variance: ({ low, mode, high }) =>
    (low * low + mode * mode + high * high - low * mode - low * high - mode * high) / 18,
  fill: ({ low, mode, high }, stream) => {
    const split = high > low ? (mode - low) / (high - low) : 0;
    return (values) => {
      for (let i = 0; i < values.length; i++) {
        const u = stream();
        values[i] =
          u < split
            ? low + Math.sqrt(u * (high - low) * (mode - low))
            : high - Math.sqrt((1 - u) * (high - low) * (high - mode));
      }
    };
  },
};
