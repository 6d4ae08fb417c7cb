import type { Install } from './install.ts';

/** Chooses for each mate in hand, among waiting parts, the hardest one that its readings still promise to fit. */
export const match: Install<'match'> = (spec, controls) => {
  const { at, among, guard, mateRepeatability, takes } = spec;
  controls.match(at, { among, guard, repeatability: mateRepeatability, takes });
};
