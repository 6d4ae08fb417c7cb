import type { FeatureSpec } from '../../scenario/parts.ts';
import { shareBetween } from '../../statistics/normal.ts';
import type { Combination, Contribution, DimensionModel } from './model.ts';

/** What a feature should become, by the scenario alone; lengths in mm. */
export interface FeaturePrediction {
  readonly mean: number;
  readonly sd: number;
  /** Width of the limits in six, and room to the nearer limit in three standard deviations; null without limits. */
  readonly pp: number | null;
  readonly ppk: number | null;
  /** Share of the parts outside the limits; null without. */
  readonly outside: number | null;
  readonly from: readonly Contribution[];
}

/** A dimension by itself. */
export const single = (name: string): Combination => new Map([[name, 1]]);

/** Share between two values over all cases. */
export function mixedShareBetween(
  lower: number,
  upper: number,
  of: Combination,
  model: DimensionModel,
): number {
  return model
    .conditions([of])
    .reduce(
      (sum, { share, mean, covariance }) =>
        sum + share * shareBetween(lower, upper, mean[0]!, Math.sqrt(covariance[0]![0]!)),
      0,
    );
}

/** Pp and Ppk by their definitions (ISO 22514-1), with the standard deviation of all parts; infinite without spread. */
export function predictFeature({ name, limits }: FeatureSpec, model: DimensionModel): FeaturePrediction {
  const of = single(name);
  const mean = model.mean(of);
  const sd = model.sd(of);
  const from = model.contributions(of);
  if (!limits) return { mean, sd, pp: null, ppk: null, outside: null, from };
  const { lower, upper } = limits;
  return {
    mean,
    sd,
    pp: (upper - lower) / (6 * sd),
    ppk: Math.min(upper - mean, mean - lower) / (3 * sd),
    // The sum of shares may miss 1 by rounding.
    outside: Math.max(0, 1 - mixedShareBetween(lower, upper, of, model)),
    from,
  };
}
