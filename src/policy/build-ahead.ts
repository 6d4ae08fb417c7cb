import { meet } from './condition.ts';
import type { Install } from './install.ts';

/** Lets an assembling station put parts aside without the mate that is missing while the condition holds. */
export const buildAhead: Install<'build-ahead'> = ({ when, ...how }, controls) =>
  meet(when, controls, controls.buildAhead(how));
