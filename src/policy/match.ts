import type { Install } from './install.ts';

/** Chooses for each mate in hand, among waiting parts, the one whose readings promise the widest margin. */
export const match: Install<'match'> = (spec, controls) => {
  controls.match(spec.at, { among: spec.among, repeatability: spec.mateRepeatability, takes: spec.takes });
};
