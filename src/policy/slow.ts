import { meet } from './condition.ts';
import type { Install } from './install.ts';

/** Lets a station work at a share of its speed while the condition holds, to make what is left of a stock last longer. */
export const slow: Install<'slow'> = ({ station, to, when }, controls) =>
  meet(when, controls, controls.slowing(station, to));
