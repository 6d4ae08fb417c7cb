/** A policy that was left out; policies by number from 0. */
export interface LeftOut {
  readonly policy: number;
  /** Runs of it that counted. */
  readonly runs: number;
  /** The one that it lay too far behind: of several, the one by most. */
  readonly by: number;
  /** How far the mean lay behind, and how far it might; in the unit of the measure's key, never negative. */
  readonly behind: number;
  readonly allowed: number;
}

/** How a choice ended; after `most runs` nothing is stated of the one ahead. */
export type How = 'one left' | 'level' | 'best mean' | 'most runs';

/** Where a choice stands after the runs that there are. */
export interface Standing {
  /** Runs that counted of each policy that is left. */
  readonly runs: number;
  readonly left: readonly number[];
  /** In the order in which they went. */
  readonly out: readonly LeftOut[];
  /** Null as long as there is more to run. */
  readonly how: How | null;
  /** The policy with the best mean of those left, the first of several; null as long as there is more to run. */
  readonly best: number | null;
  /** Runs of each policy that is left after which it ends at the latest; null before the end of the first stage. */
  readonly needed: number | null;
}

/** Values of the measure by policy and run, under the same seeds in the same order. */
export type Values = readonly (readonly number[])[];
