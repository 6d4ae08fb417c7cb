import type { Install } from './install.ts';

/** Sends rejects to a rework station instead of where the station would send them. */
export const rework: Install<'rework'> = (spec, controls) => {
  controls.sendRejects(spec.at, spec.bench);
};
