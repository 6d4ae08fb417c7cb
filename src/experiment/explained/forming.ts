import { predictForming } from '../../line/prediction/predict-forming.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import type { Compared } from '../judge.ts';
import type { Observed } from '../observe.ts';
import type { Comparing } from './comparing.ts';

/** Shares of the sheets that a forming station takes, from 0 to 1, and the mean wall of their parts, mm; null where not asked for. */
export interface ExplainedForming {
  readonly station: string;
  readonly incomplete: Compared | null;
  readonly webbed: Compared | null;
  readonly thin: Compared | null;
  readonly wall: { readonly mean: Compared; readonly sd: Compared } | null;
}

export function explainForming(
  spec: SpecOf<'form'> & { readonly name: string },
  scenario: Scenario,
  compare: Comparing,
): ExplainedForming {
  const predicted = predictForming(spec, scenario);
  const seen = (run: Observed) => run.forming.get(spec.name)!;
  const share = (key: 'incomplete' | 'webbed' | 'thin') =>
    predicted[key] === null
      ? null
      : compare.share(predicted[key], (run) => ({ hits: seen(run)[key], of: seen(run).sheets }));
  const { wall } = predicted;
  return {
    station: spec.name,
    incomplete: share('incomplete'),
    webbed: share('webbed'),
    thin: share('thin'),
    wall: wall && {
      mean: compare.mean(wall.mean, (run) => seen(run).walls.spread()),
      sd: compare.sd(wall.sd, (run) => seen(run).walls.spread()),
    },
  };
}
