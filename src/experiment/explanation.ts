import { type Contribution, DimensionModel } from '../line/prediction/model.ts';
import { predictFeature } from '../line/prediction/predict-feature.ts';
import { predictFit } from '../line/prediction/predict-fit.ts';
import { predictGauge } from '../line/prediction/predict-gauge.ts';
import { predictUnread } from '../line/prediction/predict-reading.ts';
import { clearances } from '../scenario/clearances.ts';
import type { FeatureSpec } from '../scenario/parts.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { SpecOf, StationSpec } from '../scenario/stations.ts';
import { meanInterval } from '../statistics/mean-interval.ts';
import { type RunShare, shareInterval } from '../statistics/share-interval.ts';
import { type RunSpread, spreadInterval } from '../statistics/spread-interval.ts';
import { FailedRunError } from './failed-run.ts';
import { type Compared, Judge } from './judge.ts';
import { type Observed, observe } from './observe.ts';
import { failureOf } from './run-failure.ts';

/** Coverage of the intervals that are shown, and of all those together that decide whether a value differs. */
const SHOWN = 0.95;
const DECIDING = 0.99;

/** Lengths in mm, shares from 0 to 1. */
export interface ExplainedFeature {
  readonly spec: FeatureSpec;
  readonly mean: Compared;
  readonly sd: Compared;
  /** Null without limits, as are those below. */
  readonly outside: Compared | null;
  readonly pp: number | null;
  readonly ppk: number | null;
  readonly from: readonly Contribution[];
}

export interface ExplainedPair {
  readonly hole: string;
  readonly shaft: string;
  readonly least: number;
  readonly most: number;
  readonly clearance: Compared;
  readonly sd: Compared;
  readonly fits: Compared;
  readonly tight: Compared;
  readonly loose: Compared;
  readonly from: readonly Contribution[];
}

export interface ExplainedAssembly {
  readonly station: string;
  readonly pairs: readonly ExplainedPair[];
  readonly all: Compared;
}

interface ExplainedGauging {
  readonly name: string;
  readonly errorShare: number;
  /** Null where the feature has no limits. */
  readonly off: Compared | null;
  readonly badPassed: Compared | null;
  readonly goodRejected: Compared | null;
}

export interface ExplainedGauge {
  readonly station: string;
  readonly features: readonly ExplainedGauging[];
  readonly off: Compared | null;
}

export interface ExplainedReader {
  readonly station: string;
  readonly unread: Compared;
}

/** What the scenario's dimensions come to, predicted from it alone and simulated without disturbances and policies. */
export interface Explanation {
  readonly seeds: number;
  readonly shown: number;
  readonly deciding: number;
  readonly comparisons: number;
  readonly features: readonly ExplainedFeature[];
  readonly assemblies: readonly ExplainedAssembly[];
  readonly gauges: readonly ExplainedGauge[];
  readonly readers: readonly ExplainedReader[];
}

/** Compares predictions with what was seen in the runs. */
class Comparing {
  readonly judge = new Judge(SHOWN, DECIDING);
  private readonly runs: readonly Observed[];

  constructor(runs: readonly Observed[]) {
    this.runs = runs;
  }

  share(predicted: number, seen: (run: Observed) => RunShare): Compared {
    const shares = this.runs.map(seen).filter(({ of }) => of > 0);
    return this.judge.compare(predicted, (level, comparisons) =>
      shares.length === 0 ? null : shareInterval(shares, level, comparisons),
    );
  }

  mean(predicted: number, seen: (run: Observed) => RunSpread | null): Compared {
    const means = this.spreads(seen).map(({ mean }) => mean);
    return this.judge.compare(predicted, (level, comparisons) =>
      means.length === 0 ? null : meanInterval(means, level, comparisons),
    );
  }

  sd(predicted: number, seen: (run: Observed) => RunSpread | null): Compared {
    const spreads = this.spreads(seen);
    return this.judge.compare(predicted, (level, comparisons) =>
      spreads.length === 0 ? null : spreadInterval(spreads, level, comparisons),
    );
  }

  private spreads(seen: (run: Observed) => RunSpread | null): RunSpread[] {
    return this.runs.map(seen).filter((spread) => spread !== null);
  }
}

function explainFeature(spec: FeatureSpec, model: DimensionModel, compare: Comparing): ExplainedFeature {
  const { mean, sd, outside, pp, ppk, from } = predictFeature(spec, model);
  const seen = (run: Observed) => run.features.get(spec.name)!;
  return {
    spec,
    mean: compare.mean(mean, (run) => seen(run).values.spread()),
    sd: compare.sd(sd, (run) => seen(run).values.spread()),
    outside:
      outside === null
        ? null
        : compare.share(outside, (run) => ({ hits: seen(run).outside, of: seen(run).values.count })),
    pp,
    ppk,
    from,
  };
}

function explainAssembly(
  spec: SpecOf<'assemble'> & { readonly name: string },
  scenario: Scenario,
  model: DimensionModel,
  compare: Comparing,
): ExplainedAssembly {
  const predicted = predictFit(spec, scenario, model);
  const seen = (run: Observed) => run.fits.get(spec.name)!;
  const pairs = spec.fits.map((pair, i): ExplainedPair => {
    const { clearance, sd, fits, tight, loose, from } = predicted.pairs[i]!;
    const of = (run: Observed) => seen(run).attempts;
    const own = (run: Observed) => seen(run).pairs[i]!;
    return {
      ...pair,
      ...clearances(pair, scenario),
      clearance: compare.mean(clearance, (run) => own(run).gap.spread()),
      sd: compare.sd(sd, (run) => own(run).gap.spread()),
      fits: compare.share(fits, (run) => ({ hits: of(run) - own(run).tight - own(run).loose, of: of(run) })),
      tight: compare.share(tight, (run) => ({ hits: own(run).tight, of: of(run) })),
      loose: compare.share(loose, (run) => ({ hits: own(run).loose, of: of(run) })),
      from,
    };
  });
  const all = compare.share(predicted.all, (run) => ({ hits: seen(run).fits, of: seen(run).attempts }));
  return { station: spec.name, pairs, all };
}

function explainGauge(
  spec: SpecOf<'gauge'> & { readonly name: string },
  scenario: Scenario,
  model: DimensionModel,
  compare: Comparing,
): ExplainedGauge {
  const predicted = predictGauge(spec, scenario, model);
  const seen = (run: Observed) => run.gauges.get(spec.name)!;
  const features = spec.measures.map(({ name }, i): ExplainedGauging => {
    const { errorShare, off, badPassed, goodRejected } = predicted.features[i]!;
    const share = (value: number | null, key: 'off' | 'badPassed' | 'goodRejected') =>
      value === null
        ? null
        : compare.share(value, (run) => {
            const judged = seen(run).features.get(name);
            return { hits: judged?.[key] ?? 0, of: judged?.gauged ?? 0 };
          });
    return {
      name,
      errorShare,
      off: share(off, 'off'),
      badPassed: share(badPassed, 'badPassed'),
      goodRejected: share(goodRejected, 'goodRejected'),
    };
  });
  const off =
    predicted.off === null
      ? null
      : compare.share(predicted.off, (run) => ({ hits: seen(run).off, of: seen(run).gauged }));
  return { station: spec.name, features, off };
}

function explainReader(spec: StationSpec, scenario: Scenario, compare: Comparing): ExplainedReader[] {
  if (!('reader' in spec) || !spec.reader) return [];
  const unread = compare.share(predictUnread(spec.reader, scenario), (run) => {
    const { attempts, unread } = run.readers.get(spec.name)!;
    return { hits: unread, of: attempts };
  });
  return [{ station: spec.name, unread }];
}

/** Whether the scenario has anything that `explain` could tell of. */
function tells({ parts, stations }: Scenario): boolean {
  return (
    parts.some(({ features }) => features.length > 0) || stations.some((at) => 'reader' in at && at.reader)
  );
}

function observed(scenario: Scenario, seed: number): Observed {
  try {
    return observe(scenario, seed);
  } catch (error) {
    const failure = failureOf(error);
    throw failure === null ? error : new FailedRunError('the undisturbed run', seed, failure, []);
  }
}

/**
 * Predicts the dimensions of an undisturbed line, and simulates them under seeds 1 to `seeds`.
 * @throws FailedRunError
 */
export function explain(scenario: Scenario, seeds: number): Explanation {
  const runs = tells(scenario) ? Array.from({ length: seeds }, (_, i) => observed(scenario, i + 1)) : [];
  const compare = new Comparing(runs);
  const model = new DimensionModel(scenario);
  const { stations, parts } = scenario;
  const explained = {
    features: parts.flatMap((part) => part.features).map((spec) => explainFeature(spec, model, compare)),
    assemblies: stations.flatMap((spec) =>
      spec.does === 'assemble' && spec.fits.length > 0
        ? [explainAssembly(spec, scenario, model, compare)]
        : [],
    ),
    gauges: stations.flatMap((spec) =>
      spec.does === 'gauge' && spec.measures.length > 0 ? [explainGauge(spec, scenario, model, compare)] : [],
    ),
    readers: stations.flatMap((spec) => explainReader(spec, scenario, compare)),
  };
  compare.judge.settle();
  const { shown, deciding, comparisons } = compare.judge;
  return { seeds: runs.length, shown, deciding, comparisons, ...explained };
}
