import type { Better } from '../../statistics/comparing/better.ts';

/** `sequential` leaves policies out as soon as they are surely behind; `two-stage` runs all to a number that the first stage tells. */
export const PROCEDURES = ['sequential', 'two-stage'] as const;
export type ProcedureName = (typeof PROCEDURES)[number];

/** What a choice of the best policy goes by. */
export interface SelectionSettings {
  readonly procedure: ProcedureName;
  readonly better: Better;
  /** The smallest lead worth finding, in the unit of the measure's key; above 0. */
  readonly worth: number;
  /** Probability that the best is chosen if it leads all others by `worth` or more; above one in the number of policies, below 1. */
  readonly confidence: number;
  /** Runs of each policy before anything is judged, 2 or more. */
  readonly firstStage: number;
  /** Runs of each policy after which it ends undecided; at least the first stage. */
  readonly most: number;
}
