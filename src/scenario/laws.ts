import { z } from 'zod';
import type { Law } from '../kernel/distributions/index.ts';
import { anyShare, duration, entry, kinds, positiveDuration, positiveShare, rate } from './fields.ts';

const names = [
  'constant', 'uniform', 'triangular', 'normal', 'lognormal', 'gamma', 'weibull', 'exponential', 'geometric',
  'empirical',
] as const; // biome-ignore format: one line reads better

const law = <Name extends (typeof names)[number]>(distribution: Name) => ({
  distribution: z.literal(distribution),
});
const spreadBy = { mean: positiveDuration, sd: duration.optional(), cv: anyShare.optional() };

/** A normal draw is made from 32 bits, so it lies within 6.34 standard deviations of the mean. */
const LEAST_SDS = 6.4;
/** Beyond this a sample of any size one could wait for tells nothing of the mean. */
const MOST_CV = 10;

interface GivenSpread {
  readonly mean: number;
  readonly sd?: number | undefined;
  readonly cv?: number | undefined;
}

/** Mean and standard deviation from `mean` with either `sd` or `cv`. */
function withSd(given: GivenSpread, context: z.RefinementCtx): { mean: number; sd: number } {
  if ((given.sd === undefined) === (given.cv === undefined)) {
    context.addIssue({
      code: 'custom',
      message: 'expected exactly one of "sd" (such as 4 s) and "cv" (such as 20 %)',
    });
    return z.NEVER;
  }
  const sd = given.sd ?? given.cv! * given.mean;
  if (sd > MOST_CV * given.mean) {
    context.addIssue({
      code: 'custom',
      message: `a spread of more than ${MOST_CV} times the mean is not allowed`,
    });
    return z.NEVER;
  }
  return { mean: given.mean, sd };
}

const positiveLaw = <Name extends 'lognormal' | 'gamma'>(distribution: Name) =>
  entry({ ...law(distribution), ...spreadBy }).transform((given, context): Law => {
    const { mean, sd } = withSd(given, context);
    return sd === 0 ? { distribution: 'constant', value: mean } : { distribution, mean, sd };
  });

/**
 * A time that varies. A plain time such as `42 s` is a constant; a rate such as `12 /h` means one every so often,
 * and belongs under `exponential`. `geometric` counts steps of equal length until the first success.
 */
const varying = kinds('distribution', names, [
  entry({ ...law('constant'), value: duration }),
  entry({ ...law('uniform'), low: duration, high: duration }).refine(({ low, high }) => low <= high, {
    error: '"low" lies above "high"',
  }),
  entry({ ...law('triangular'), low: duration, mode: duration, high: duration }).refine(
    ({ low, mode, high }) => low <= mode && mode <= high,
    { error: 'expected low <= mode <= high' },
  ),
  entry({ ...law('normal'), ...spreadBy }).transform((given, context): Law => {
    const { mean, sd } = withSd(given, context);
    if (mean < LEAST_SDS * sd) {
      context.addIssue({
        code: 'custom',
        message: `a normal time needs a mean of at least ${LEAST_SDS} sd to stay above zero; use lognormal or gamma`,
      });
      return z.NEVER;
    }
    return { distribution: 'normal', mean, sd };
  }),
  positiveLaw('lognormal'),
  positiveLaw('gamma'),
  entry({
    ...law('weibull'),
    mean: positiveDuration,
    shape: z
      .number({ error: 'expected a number, such as 1.5' })
      .min(0.1, { error: 'expected a number, 0.1 or more' }),
  }),
  entry({ ...law('exponential'), mean: positiveDuration.optional(), rate: rate.optional() }).transform(
    (given, context): Law => {
      if ((given.mean === undefined) === (given.rate === undefined)) {
        context.addIssue({
          code: 'custom',
          message: 'expected exactly one of "mean" (42 s) and "rate" (12 /h)',
        });
        return z.NEVER;
      }
      return { distribution: 'exponential', mean: given.mean ?? 1 / given.rate! };
    },
  ),
  entry({ ...law('geometric'), chance: positiveShare, step: positiveDuration }),
  entry({ ...law('empirical'), values: z.array(duration, { error: 'expected a list of times' }).min(1) }),
]);

export const time = z.union([
  varying,
  duration.transform((value): Law => ({ distribution: 'constant', value })),
]);
