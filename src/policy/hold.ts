import { meet } from './condition.ts';
import type { Install } from './install.ts';

/** Lets a station take nothing new while the condition holds. */
export const hold: Install<'hold'> = ({ station, when }, controls) => {
  let held = false;
  meet(when, controls, (holds) => {
    if (holds === held) return;
    held = holds;
    if (holds) controls.hold(station);
    else controls.release(station);
  });
};
