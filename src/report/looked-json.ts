import type { Looked } from '../experiment/looked.ts';

/** What pictures show of the runs that were looked at, as data. */
export interface LookedDocument {
  readonly sizes: readonly {
    readonly of: string;
    readonly kind: 'dimension' | 'clearance';
    readonly lower_mm: number;
    readonly upper_mm: number;
    readonly first_edge_mm: number;
    readonly bin_mm: number;
    readonly policies: readonly {
      readonly policy: string;
      readonly below: number;
      readonly counts: readonly number[];
      readonly above: number;
    }[];
  }[];
  readonly levels: {
    readonly runs: number;
    readonly times_s: readonly number[];
    readonly of: readonly {
      readonly name: string;
      readonly kind: 'stock' | 'buffer';
      readonly policies: readonly { readonly policy: string; readonly mean_pieces: readonly number[] }[];
    }[];
  };
}

export const lookedJson = ({ seeds, sizes, times, levels }: Looked): LookedDocument => ({
  sizes: sizes.map(({ of, kind, limits, from, width, rows }) => ({
    ...{ of, kind, lower_mm: limits.lower, upper_mm: limits.upper, first_edge_mm: from, bin_mm: width },
    policies: rows.map(({ policy, below, counts, above }) => ({ policy, below, counts, above })),
  })),
  levels: {
    ...{ runs: seeds, times_s: times },
    of: levels.map(({ name, kind, rows }) => ({
      ...{ name, kind },
      policies: rows.map(({ policy, means }) => ({ policy, mean_pieces: means })),
    })),
  },
});
