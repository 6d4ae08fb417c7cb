import { BAD_SHARE, type Spread } from '../experiment/spread.ts';
import type { Skewness } from '../statistics/skewness.ts';
import { type EstimateDocument, estimateJson } from './estimate-json.ts';
import { keyedUnit } from './keyed-unit.ts';

/** How the runs of each policy lie, as data. Numbers are in the units that keys name, unrounded. */
export interface SpreadDocument {
  /** Share of runs that are worse than `bad`. */
  readonly bad_share: number;
  readonly measures: readonly {
    readonly key: string;
    readonly name: string;
    readonly unit: string;
    readonly rows: readonly SpreadRowDocument[];
  }[];
}

interface SpreadRowDocument {
  readonly policy: string;
  readonly median: EstimateDocument;
  readonly bad: EstimateDocument;
  /** Of a ratio, by the totals of all runs; null of what is none. */
  readonly over_all: EstimateDocument | null;
  /** Of the values behind the mean and of the differences to the baseline; these are null for the baseline itself. */
  readonly mean_skewness: SkewnessDocument;
  readonly difference_skewness: SkewnessDocument | null;
}

export interface SkewnessDocument {
  readonly value: number;
  /** Runs that Cochran's rule asks for. */
  readonly runs_wanted: number;
  /** Whether there are fewer, so that the interval is doubtful. */
  readonly doubtful: boolean;
}

export const skewnessJson = ({ value, runs, doubtful }: Skewness): SkewnessDocument => ({
  ...{ value, runs_wanted: runs, doubtful },
});

export function spreadJson({ measures, skews }: Spread): SpreadDocument {
  return {
    bad_share: BAD_SHARE,
    measures: measures.map(({ measure: { key, name }, rows }) => ({
      ...{ key, name, unit: keyedUnit(key) },
      rows: rows.map(({ policy, median, bad, overAll }) => {
        const skew = skews.find((one) => one.policy === policy && one.measure.key === key)!;
        return {
          ...{ policy, median: estimateJson(median), bad: estimateJson(bad) },
          over_all: overAll && estimateJson(overAll),
          mean_skewness: skewnessJson(skew.mean),
          difference_skewness: skew.difference && skewnessJson(skew.difference),
        };
      }),
    })),
  };
}
