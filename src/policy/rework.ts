import type { Install } from './install.ts';

/** Sends rejects to a rework station while it is in force, instead of where the station would send them. */
export const rework: Install<'rework'> = ({ at, bench }, controls) => controls.sendingRejects(at, bench);
