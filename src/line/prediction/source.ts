/**
 * One independent source of variation: a standard normal variable, and by how much each dimension follows it, mm.
 * Dimensions are named as in a mating pair: a feature of the part by its name, one of a mate as MATE.FEATURE.
 * Dimensions that follow the same source vary together.
 */
export interface Source {
  readonly name: string;
  readonly of: ReadonlyMap<string, number>;
}

/** One of the cases of something that is not normal, such as one cavity: how often, and what it adds, mm. */
export interface Case {
  readonly share: number;
  readonly shifts: ReadonlyMap<string, number>;
  /** Standard deviation that each dimension has in this case on top of its sources, mm. */
  readonly spreads?: ReadonlyMap<string, number>;
}

/** Something that is in one of several cases, independently of everything else; shares add up to 1. */
export interface Cases {
  readonly name: string;
  readonly cases: readonly Case[];
  /** Uncorrelated sources of the same variance, where it can be told what it comes from. Their law is not that of the cases. */
  readonly from?: readonly Source[];
}

/** Dimensions for which no closed form is known here, and why. */
export interface Open {
  readonly why: string;
  readonly of: ReadonlySet<string>;
}
