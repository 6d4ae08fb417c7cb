import type { Estimate } from '../statistics/estimate.ts';

/** An estimate as data; ends are null where the runs are too few to give any. */
export interface EstimateDocument {
  readonly value: number;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Coverage that the interval is made for. */
  readonly level: number;
  /** Runs behind it. */
  readonly runs: number;
  readonly method: string;
}

export const estimateJson = ({ value, lower, upper, level, runs, method }: Estimate): EstimateDocument => ({
  ...{ value, lower, upper, level, runs, method },
});

/** A mean as data. */
export type MeanDocument = Omit<EstimateDocument, 'value'> & { readonly mean: number };

export const meanJson = ({ value, lower, upper, runs, level, method }: Estimate): MeanDocument => ({
  ...{ mean: value, lower, upper, runs, level, method },
});
