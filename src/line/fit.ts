import type { Feature } from './features.ts';

/** One mating pair. Clearance is hole minus shaft. */
export interface Pair {
  readonly feature: Feature;
  /** Which of the mate's features, in the order of `Assemble`'s mate values. */
  readonly mate: number;
  readonly partIsHole: boolean;
  readonly least: number;
  readonly most: number;
}

export const clearance = (pair: Pair, part: number, mate: number): number =>
  pair.partIsHole ? part - mate : mate - part;

/** Distance of a clearance from the nearer limit, mm; negative outside the limits. */
export const margin = (pair: Pair, gap: number): number => Math.min(gap - pair.least, pair.most - gap);
