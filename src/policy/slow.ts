import type { Install } from './install.ts';

/** Lets a station work at a share of its speed while it is in force, to make what is left of a stock last longer. */
export const slow: Install<'slow'> = ({ station, to }, controls) => controls.slowing(station, to);
