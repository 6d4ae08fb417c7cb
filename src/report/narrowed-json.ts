import type { Narrowed } from '../experiment/narrow.ts';

/** What became of the width that was asked for. */
export interface NarrowedDocument {
  /** Key of the measure, in whose unit the numbers are. */
  readonly by: string;
  readonly half_width: number;
  readonly first_stage: number;
  readonly at_most: number;
  readonly rows: readonly {
    readonly policy: string;
    /** Runs that it takes, by the spread of the first stage. */
    readonly needed: number;
    readonly mean: number;
    /** Null where there were fewer. */
    readonly lower: number | null;
    readonly upper: number | null;
  }[];
}

export const narrowedJson = ({ measure, half, firstStage, most, rows }: Narrowed): NarrowedDocument => ({
  ...{ by: measure.key, half_width: half, first_stage: firstStage, at_most: most },
  rows: rows.map(({ policy, needed, estimate: { value, lower, upper } }) => ({
    ...{ policy, needed, mean: value, lower, upper },
  })),
});
