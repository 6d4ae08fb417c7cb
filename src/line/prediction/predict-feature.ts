import type { FeatureSpec } from '../../scenario/parts.ts';
import type { Combination, Contribution, DimensionModel } from './model.ts';
import { shareWithin } from './within.ts';

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
    outside: Math.max(0, 1 - shareWithin([limits], model.conditions([of]))),
    from,
  };
}
