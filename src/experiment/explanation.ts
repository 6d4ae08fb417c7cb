import { gradeSharesOf } from '../line/grade-shares.ts';
import { DimensionModel } from '../line/prediction/model.ts';
import type { ByGrade } from '../scenario/grades.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { type ExplainedAssembly, explainAssembly } from './explained/assembly.ts';
import { Comparing } from './explained/comparing.ts';
import { type ExplainedFeature, explainFeature } from './explained/feature.ts';
import { type ExplainedForming, explainForming } from './explained/forming.ts';
import { type ExplainedGauge, explainGauge } from './explained/gauge.ts';
import { type ExplainedReader, explainReader } from './explained/reader.ts';
import { FailedRunError } from './failed-run.ts';
import { type Observed, observe } from './observe.ts';
import { failureOf } from './run-failure.ts';

/** Grades of the marks that took at a station where they are not all alike. */
export interface ExplainedMarks {
  readonly station: string;
  readonly takesHold: number;
  readonly grades: ByGrade;
}

/** What the scenario's dimensions come to, predicted from it alone and simulated without disturbances and policies. */
export interface Explanation {
  readonly seeds: number;
  readonly shown: number;
  readonly deciding: number;
  readonly comparisons: number;
  /** How many of these predictions lie outside what the runs allow. */
  readonly differing: number;
  readonly forming: readonly ExplainedForming[];
  readonly features: readonly ExplainedFeature[];
  readonly assemblies: readonly ExplainedAssembly[];
  readonly gauges: readonly ExplainedGauge[];
  readonly marks: readonly ExplainedMarks[];
  readonly readers: readonly ExplainedReader[];
}

/** Whether the scenario has anything that `explain` could tell of. */
function tells({ parts, stations }: Scenario): boolean {
  return (
    parts.some(({ features }) => features.length > 0) ||
    stations.some((at) => ('reader' in at && at.reader) || (at.does === 'form' && (at.window || at.wall)))
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
    forming: stations.flatMap((spec) =>
      spec.does === 'form' && (spec.window || spec.wall) ? [explainForming(spec, scenario, compare)] : [],
    ),
    features: parts.flatMap((part) => part.features).map((spec) => explainFeature(spec, model, compare)),
    assemblies: stations.flatMap((spec) =>
      spec.does === 'assemble' && spec.fits.length > 0
        ? [explainAssembly(spec, scenario, model, compare)]
        : [],
    ),
    gauges: stations.flatMap((spec) =>
      spec.does === 'gauge' && spec.measures.length > 0 ? [explainGauge(spec, scenario, model, compare)] : [],
    ),
    marks: stations.flatMap((spec) =>
      spec.does === 'mark' && (spec.grades || spec.quality)
        ? [{ station: spec.name, takesHold: spec.takesHold, grades: gradeSharesOf(spec) }]
        : [],
    ),
    readers: stations.flatMap((spec) => explainReader(spec, scenario, compare)),
  };
  compare.judge.settle();
  const { shown, deciding, comparisons, differing } = compare.judge;
  return { seeds: runs.length, shown, deciding, comparisons, differing, ...explained };
}
