import type { Install } from './install.ts';

/** Chooses for each mate in hand, among waiting parts, the one that its rule likes best, going by readings. */
export const match: Install<'match'> = (spec, controls) => controls.matching(spec);
