import { condition } from './conditions.ts';

/** What decides when a response is in force that is so only while something holds. */
export const whileHolds = { when: condition.describe('in force while this holds') };
