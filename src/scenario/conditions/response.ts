import type { z } from 'zod';
import { entry, label } from '../fields.ts';

/** While another response of the policy is in force. */
export const otherResponse = entry({
  response: label.describe('the "name" of another response of the same policy: holds while it is in force'),
});

export type ResponseCondition = z.output<typeof otherResponse>;
