import type { FeatureSpec } from '../../scenario/parts.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import type { Range } from '../../statistics/box-probability.ts';
import { inspectionError } from '../../statistics/inspection-error.ts';
import type { DimensionModel } from './model.ts';
import { single } from './predict-feature.ts';
import { shareWithin } from './within.ts';

/** What a gauge should make of one feature, as shares of the parts that it gauges. */
interface GaugingPrediction {
  /** Standard deviation of the gauge's error as a share of that of the readings. */
  readonly errorShare: number;
  /** Null where the feature has no limits. */
  readonly off: number | null;
  /** Bad parts that pass this feature, and good ones that do not. */
  readonly badPassed: number | null;
  readonly goodRejected: number | null;
}

export interface GaugePrediction {
  readonly features: readonly GaugingPrediction[];
  /** Share of the parts with any reading off limits; null where nothing measured has limits. */
  readonly off: number | null;
}

type Measure = SpecOf<'gauge'>['measures'][number];

/** The limits for readings: a guard band draws those for parts in. */
const drawnIn = ({ lower, upper }: Range, guard: number): Range => ({
  lower: lower + guard,
  upper: upper - guard,
});

function predictGauging(
  { name, bias, repeatability, guard }: Measure,
  { limits }: FeatureSpec,
  model: DimensionModel,
): GaugingPrediction {
  const of = single(name);
  const sd = model.sd(of);
  const errorShare = repeatability > 0 ? repeatability / Math.hypot(sd, repeatability) : 0;
  if (!limits) return { errorShare, off: null, badPassed: null, goodRejected: null };
  const sum = { off: 0, badPassed: 0, goodRejected: 0 };
  for (const { share, mean, covariance } of model.conditions([of])) {
    const found = inspectionError({
      limits,
      accepted: drawnIn(limits, guard),
      mean: mean[0]!,
      sd: Math.sqrt(covariance[0]![0]!),
      bias,
      error: repeatability,
    });
    sum.off += share * (1 - found.accept);
    sum.badPassed += share * found.falseAccept;
    sum.goodRejected += share * found.falseReject;
  }
  return { errorShare, ...sum };
}

/** Readings are true values plus bias plus a normal error of their own. */
export function predictGauge(
  { measures }: SpecOf<'gauge'>,
  scenario: Scenario,
  model: DimensionModel,
): GaugePrediction {
  const specs = new Map(scenario.parts.flatMap((part) => part.features).map((spec) => [spec.name, spec]));
  const features = measures.map((measure) => predictGauging(measure, specs.get(measure.name)!, model));
  const judged = measures.filter(({ name }) => specs.get(name)!.limits);
  if (judged.length === 0) return { features, off: null };
  const box = judged.map(({ name, guard }) => drawnIn(specs.get(name)!.limits!, guard));
  const readings = model.conditions(judged.map(({ name }) => single(name))).map((condition) => ({
    ...condition,
    mean: condition.mean.map((value, i) => value + judged[i]!.bias),
    covariance: condition.covariance.map((row, i) =>
      row.map((value, j) => (i === j ? value + judged[i]!.repeatability ** 2 : value)),
    ),
  }));
  const within = shareWithin(box, readings);
  return { features, off: Math.max(0, 1 - within) };
}
