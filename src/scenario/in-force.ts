import type { Law } from '../kernel/distributions/index.ts';
import { type ConditionSpec, condition } from './conditions.ts';
import { label, positiveDuration } from './fields.ts';
import { time } from './laws.ts';

const timing = {
  name: label.optional().describe('what other responses of the policy call it under "response"'),
  notice: time.optional().describe('from when the condition begins to hold until that is known'),
  'acts-after': time.optional().describe('from when it is known until the response is in force'),
  until: condition
    .optional()
    .describe('what ends it; it goes on until then, whether its condition still holds or not'),
  lasts: time
    .refine((law) => law.distribution !== 'constant' || law.value > 0, {
      error: 'expected a time above zero',
    })
    .optional()
    .describe('how long it is in force; it goes on for so long, whether its condition still holds or not'),
  'cool-down': positiveDuration
    .optional()
    .describe('after its end, how long it is not begun again; then it is, if its condition still holds'),
};

/** What decides when a response is in force that may be so all the time. */
export const always = {
  ...timing,
  when: condition.optional().describe('in force from when this holds; left out, from the start on'),
};

/** What decides when a response is in force that is so only while something holds. */
export const whileHolds = {
  ...timing,
  when: condition.describe(
    'in force while this holds, or from then on where "until" or "lasts" says how long',
  ),
};

/** What both come to. Times in s. */
export interface Timing {
  readonly name?: string | undefined;
  readonly when?: ConditionSpec | undefined;
  readonly notice?: Law | undefined;
  readonly actsAfter?: Law | undefined;
  readonly until?: ConditionSpec | undefined;
  readonly lasts?: Law | undefined;
  readonly coolDown?: number | undefined;
}
