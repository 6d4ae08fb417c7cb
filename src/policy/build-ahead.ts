import type { Install } from './install.ts';

/** Lets an assembling station put parts aside without the mate that is missing while it is in force. */
export const buildAhead: Install<'build-ahead'> = (spec, controls) => controls.buildAhead(spec);
