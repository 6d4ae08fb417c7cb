import type { DimensionModel } from '../../line/prediction/model.ts';
import { single } from '../../line/prediction/predict-feature.ts';
import { predictGauging, predictOff } from '../../line/prediction/predict-gauge.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import { type SamplingPlan, samplingPlan } from '../../standards/iso-2859.ts';
import { lotsAccepted } from '../../standards/iso-2859-long-run.ts';
import { acceptanceProbability } from '../../statistics/operating-characteristic.ts';
import type { Compared } from '../judge.ts';
import type { Observed } from '../observe.ts';
import type { Comparing } from './comparing.ts';

type Spec = SpecOf<'gauge'> & { readonly name: string };

interface ExplainedGauging {
  readonly name: string;
  /** The gauge's share of the spread of the readings, and the number of distinct categories; null without a closed form. */
  readonly errorShare: number | null;
  readonly categories: number | null;
  /** Null where the feature has no limits. */
  readonly off: Compared | null;
  readonly badPassed: Compared | null;
  readonly goodRejected: Compared | null;
}

/** Acceptance sampling; chances from 0 to 1, null without a closed form. */
export interface ExplainedPlan {
  readonly lot: number;
  readonly normal: SamplingPlan & { readonly accepts: number | null };
  readonly tightened: SamplingPlan & { readonly accepts: number | null };
  /** Share of the lots accepted. */
  readonly accepted: Compared;
}

export interface ExplainedGauge {
  readonly station: string;
  readonly features: readonly ExplainedGauging[];
  /** Null where nothing measured has limits. */
  readonly off: Compared | null;
  /** Null without acceptance sampling. */
  readonly plan: ExplainedPlan | null;
}

function explainGauging(
  spec: Spec,
  reading: Spec['measures'][number],
  scenario: Scenario,
  model: DimensionModel,
  compare: Comparing,
): ExplainedGauging {
  const { name } = reading;
  const feature = scenario.parts.flatMap((part) => part.features).find((it) => it.name === name)!;
  const predicted = model.openBy([single(name)]) === null ? predictGauging(reading, feature, model) : null;
  const share = (key: 'off' | 'badPassed' | 'goodRejected') =>
    feature.limits &&
    compare.share(predicted?.[key] ?? null, (run) => {
      const judged = run.gauges.get(spec.name)!.features.get(name);
      return { hits: judged?.[key] ?? 0, of: judged?.gauged ?? 0 };
    });
  return {
    name,
    errorShare: predicted?.errorShare ?? null,
    categories: predicted?.categories ?? null,
    off: share('off'),
    badPassed: share('badPassed'),
    goodRejected: share('goodRejected'),
  };
}

/** @param off predicted share of the parts off limits */
function explainPlan(spec: Spec, off: number | null, compare: Comparing): ExplainedPlan | null {
  if (spec.inspection.by !== 'plan') return null;
  const { lot, aql } = spec.inspection;
  const [normal, tightened] = (['normal', 'tightened'] as const).map((severity) => {
    const plan = samplingPlan(lot, aql, severity);
    return { ...plan, accepts: off === null ? null : acceptanceProbability(plan.sample, plan.accept, off) };
  }) as [ExplainedPlan['normal'], ExplainedPlan['tightened']];
  const open = normal.accepts === null || tightened.accepts === null;
  const accepted = compare.share(open ? null : lotsAccepted(normal.accepts, tightened.accepts), (run) => {
    const { lots, lotsAccepted: hits } = run.gauges.get(spec.name)!;
    return { hits, of: lots };
  });
  return { lot, normal, tightened, accepted };
}

export function explainGauge(
  spec: Spec,
  scenario: Scenario,
  model: DimensionModel,
  compare: Comparing,
): ExplainedGauge {
  const features = spec.measures.map((reading) => explainGauging(spec, reading, scenario, model, compare));
  const judges = features.some(({ off }) => off !== null);
  const open = model.openBy(spec.measures.map(({ name }) => single(name))) !== null;
  const predicted = open ? null : predictOff(spec, scenario, model);
  const seen = (run: Observed) => run.gauges.get(spec.name)!;
  const off = judges
    ? compare.share(predicted, (run) => ({ hits: seen(run).off, of: seen(run).gauged }))
    : null;
  return { station: spec.name, features, off, plan: judges ? explainPlan(spec, predicted, compare) : null };
}
