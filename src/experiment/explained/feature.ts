import type { Contribution, DimensionModel, Shift } from '../../line/prediction/model.ts';
import { predictFeature, single } from '../../line/prediction/predict-feature.ts';
import type { FeatureSpec } from '../../scenario/parts.ts';
import type { Compared } from '../judge.ts';
import type { Observed } from '../observe.ts';
import type { Comparing } from './comparing.ts';

/** Lengths in mm, shares from 0 to 1. */
export interface ExplainedFeature {
  readonly spec: FeatureSpec;
  readonly mean: Compared;
  readonly sd: Compared;
  /** Null without limits. */
  readonly outside: Compared | null;
  /** Null without limits and without a closed form. */
  readonly pp: number | null;
  readonly ppk: number | null;
  /** What moves the mean off its design, and what the variance comes from; empty without a closed form. */
  readonly shifts: readonly Shift[];
  readonly from: readonly Contribution[];
  /** Why there is no closed form; null where there is. */
  readonly openBy: string | null;
}

export function explainFeature(
  spec: FeatureSpec,
  model: DimensionModel,
  compare: Comparing,
): ExplainedFeature {
  const openBy = model.openBy([single(spec.name)]);
  const predicted = openBy === null ? predictFeature(spec, model) : null;
  const seen = (run: Observed) => run.features.get(spec.name)!;
  return {
    spec,
    mean: compare.mean(predicted?.mean ?? null, (run) => seen(run).values.spread()),
    sd: compare.sd(predicted?.sd ?? null, (run) => seen(run).values.spread()),
    outside:
      spec.limits &&
      compare.share(predicted?.outside ?? null, (run) => ({
        hits: seen(run).outside,
        of: seen(run).values.count,
      })),
    pp: predicted?.pp ?? null,
    ppk: predicted?.ppk ?? null,
    shifts: predicted ? model.shifts(single(spec.name)) : [],
    from: predicted ? predicted.from : [],
    openBy,
  };
}
