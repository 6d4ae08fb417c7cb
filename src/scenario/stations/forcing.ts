import { z } from 'zod';
import { duration, entry, positiveForce, ratio, share } from '../fields.ts';

const STIFFNESS = 'expected a force per length above zero, such as 400 N/mm';

/** How parts that are too tight are pressed together with their mates. */
export const forcing = entry({
  stiffness: ratio('force', '400 N/mm')
    .transform(({ value, per }, context) => {
      if (per === 'length' && value > 0) return value;
      context.addIssue({ code: 'custom', message: STIFFNESS });
      return z.NEVER;
    })
    .describe('force per mm of clearance that lacks, of the tightest pair'),
  limit: positiveForce.describe('the most force; what needs more does not go together'),
  damages: share.default(0).describe('chance that pressing together spoils part and mates'),
  takes: duration.default(0).describe('time that pressing adds to the cycle, whether it succeeds or not'),
});

export type ForcingSpec = z.output<typeof forcing>;
