import type { Install } from './install.ts';

/** Lets parts go past a station while it is in force, to be done in the end or never. */
export const skip: Install<'skip'> = ({ station, later }, controls) => controls.skipping(station, later);
