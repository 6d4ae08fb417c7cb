import { z } from 'zod';

const error = 'expected yes or no';

/** Yes or no, also written true or false. */
export const yesNo = z
  .union([z.boolean({ error }), z.enum(['yes', 'no'], { error })], { error })
  .transform((given) => given === true || given === 'yes');
