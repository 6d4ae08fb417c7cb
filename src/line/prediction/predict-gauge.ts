import type { FeatureSpec } from '../../scenario/parts.ts';
import type { ReadingSpec } from '../../scenario/readings.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import { categoriesOf } from '../../statistics/gauge-study.ts';
import { inspectionError } from '../../statistics/inspection-error.ts';
import { readingBias } from '../reading-bias.ts';
import { acceptedReadings } from './accepted.ts';
import { gathered } from './gather.ts';
import type { DimensionModel } from './model.ts';
import { single } from './predict-feature.ts';
import { shareWithin } from './within.ts';

/** What a gauge should make of one feature, as shares of the parts that it gauges. */
interface GaugingPrediction {
  /** Standard deviation of the gauge's error as a share of that of the readings: % GRR. */
  readonly errorShare: number;
  /** Number of distinct categories; infinite without error. */
  readonly categories: number;
  /** Null where the feature has no limits. */
  readonly off: number | null;
  /** Bad parts that pass this feature, and good ones that do not. */
  readonly badPassed: number | null;
  readonly goodRejected: number | null;
}

/** Of readings of one part, by whoever takes them. */
const errorOf = ({ repeatability, reproducibility }: ReadingSpec): number =>
  Math.hypot(repeatability, reproducibility);

/** What becomes of one feature by itself. */
export function predictGauging(
  reading: ReadingSpec,
  feature: FeatureSpec,
  model: DimensionModel,
): GaugingPrediction {
  const { name, limits } = feature;
  const of = single(name);
  const sd = model.sd(of);
  const error = errorOf(reading);
  const known = {
    errorShare: error > 0 ? error / Math.hypot(sd, error) : 0,
    categories: error > 0 ? categoriesOf(sd, error) : Number.POSITIVE_INFINITY,
  };
  if (!limits) return { ...known, off: null, badPassed: null, goodRejected: null };
  const sum = { off: 0, badPassed: 0, goodRejected: 0 };
  for (const { share, mean, covariance } of gathered(model.conditions([of]))) {
    const found = inspectionError({
      limits,
      accepted: acceptedReadings(limits, reading),
      mean: mean[0]!,
      sd: Math.sqrt(covariance[0]![0]!),
      bias: readingBias(reading, feature),
      error,
    });
    sum.off += share * (1 - found.accept);
    sum.badPassed += share * found.falseAccept;
    sum.goodRejected += share * found.falseReject;
  }
  return { ...known, ...sum };
}

/**
 * Share of the parts with any reading off limits; null where nothing measured has limits. Readings are true values plus
 * bias plus normal errors, those of the appraisers among them: over many appraisers, for each has his own in a run.
 */
export function predictOff(
  { measures }: SpecOf<'gauge'>,
  scenario: Scenario,
  model: DimensionModel,
): number | null {
  const specs = new Map(scenario.parts.flatMap((part) => part.features).map((spec) => [spec.name, spec]));
  const judged = measures.filter(({ name }) => specs.get(name)!.limits);
  if (judged.length === 0) return null;
  const box = judged.map((reading) => acceptedReadings(specs.get(reading.name)!.limits!, reading));
  const biases = judged.map((reading) => readingBias(reading, specs.get(reading.name)!));
  const readings = model.conditions(judged.map(({ name }) => single(name))).map((condition) => ({
    ...condition,
    mean: condition.mean.map((value, i) => value + biases[i]!),
    covariance: condition.covariance.map((row, i) =>
      row.map((value, j) => (i === j ? value + errorOf(judged[i]!) ** 2 : value)),
    ),
  }));
  return Math.max(0, 1 - shareWithin(box, readings));
}
