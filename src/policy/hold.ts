import type { Install } from './install.ts';

/** Lets a station take nothing new while it is in force. */
export const hold: Install<'hold'> = ({ station }, controls) => {
  let held = false;
  return (holds) => {
    if (holds === held) return;
    held = holds;
    if (holds) controls.hold(station);
    else controls.release(station);
  };
};
