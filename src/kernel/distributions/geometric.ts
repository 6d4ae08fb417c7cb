import { ln, ln1p, square } from '../elementary.ts';
import type { Distribution } from './distribution.ts';

/**
 * Trials up to and including the first success, each of the same `chance` (above 0, at most 1) and each taking `step`.
 * Sampled by inverting its distribution function, one uniform a draw: source L. Devroye (1986), Non-Uniform Random
 * Variate Generation, chapter X.2, from memory and checked in the tests.
 */
export const geometric: Distribution<{ readonly chance: number; readonly step: number }> = {
  mean: ({ chance, step }) => step / chance,
  variance: ({ chance, step }) => square(step / chance) * (1 - chance),
  fill: ({ chance, step }, stream) => {
    // The logarithm of a failure's chance: minus infinity when success is certain, which makes every draw one step.
    const failure = ln1p(-chance);
    return (values) => {
      for (let i = 0; i < values.length; i++) {
        values[i] = step * (1 + Math.floor(ln(1 - stream()) / failure));
      }
    };
  },
};
