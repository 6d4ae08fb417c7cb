import type { Install } from './install.ts';

/** Lets a station work faster than it would while it is in force, to catch up. */
export const speedUp: Install<'speed-up'> = ({ station, to }, controls) => controls.slowing(station, to);
