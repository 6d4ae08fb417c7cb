import type { Contribution, DimensionModel } from '../../line/prediction/model.ts';
import { gapOf, predictFit, predictForcing, predictPair } from '../../line/prediction/predict-fit.ts';
import { clearances, sideNamed } from '../../scenario/clearances.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import { type Stack, toleranceStack } from '../../statistics/tolerance-stack.ts';
import type { Compared } from '../judge.ts';
import type { Observed } from '../observe.ts';
import type { Comparing } from './comparing.ts';

type Spec = SpecOf<'assemble'> & { readonly name: string };

/** Lengths in mm, shares from 0 to 1. */
export interface ExplainedPair {
  readonly hole: string;
  readonly shaft: string;
  readonly least: number;
  readonly most: number;
  /** The clearance by the limits of both sides; null where one has none. */
  readonly stack: Stack | null;
  readonly clearance: Compared;
  readonly sd: Compared;
  readonly fits: Compared;
  readonly tight: Compared;
  readonly loose: Compared;
  /** Empty without a closed form. */
  readonly from: readonly Contribution[];
}

/** What the press makes of parts that do not fit, as shares of first attempts. */
interface ExplainedForcing {
  readonly forced: Compared;
  readonly damaged: Compared;
  readonly tight: Compared;
}

export interface ExplainedAssembly {
  readonly station: string;
  readonly pairs: readonly ExplainedPair[];
  readonly all: Compared;
  /** Null where nothing is pressed. */
  readonly forcing: ExplainedForcing | null;
  /** Why there is no closed form for all pairs together; null where there is. */
  readonly openBy: string | null;
}

function stackOf(pair: Spec['fits'][number], scenario: Scenario): Stack | null {
  const [hole, shaft] = [pair.hole, pair.shaft].map((name) => sideNamed(name, scenario)!.limits);
  if (!hole || !shaft) return null;
  return toleranceStack([
    { factor: 1, limits: hole },
    { factor: -1, limits: shaft },
  ]);
}

function explainPair(
  spec: Spec,
  i: number,
  scenario: Scenario,
  model: DimensionModel,
  compare: Comparing,
): ExplainedPair {
  const pair = spec.fits[i]!;
  const predicted = model.openBy([gapOf(pair)]) === null ? predictPair(pair, scenario, model) : null;
  const of = (run: Observed) => run.fits.get(spec.name)!.attempts;
  const own = (run: Observed) => run.fits.get(spec.name)!.pairs[i]!;
  const share = (key: 'fits' | 'tight' | 'loose', hits: (run: Observed) => number) =>
    compare.share(predicted?.[key] ?? null, (run) => ({ hits: hits(run), of: of(run) }));
  return {
    hole: pair.hole,
    shaft: pair.shaft,
    ...clearances(pair, scenario),
    stack: stackOf(pair, scenario),
    clearance: compare.mean(predicted?.clearance ?? null, (run) => own(run).gap.spread()),
    sd: compare.sd(predicted?.sd ?? null, (run) => own(run).gap.spread()),
    fits: share('fits', (run) => of(run) - own(run).tight - own(run).loose),
    tight: share('tight', (run) => own(run).tight),
    loose: share('loose', (run) => own(run).loose),
    from: predicted ? predicted.from : [],
  };
}

export function explainAssembly(
  spec: Spec,
  scenario: Scenario,
  model: DimensionModel,
  compare: Comparing,
): ExplainedAssembly {
  const openBy = model.openBy(spec.fits.map(gapOf));
  const pairs = spec.fits.map((_, i) => explainPair(spec, i, scenario, model, compare));
  const seen = (run: Observed) => run.fits.get(spec.name)!;
  const share = (predicted: number | null, key: 'fits' | 'forced' | 'damaged' | 'tooTight') =>
    compare.share(predicted, (run) => ({ hits: seen(run)[key], of: seen(run).attempts }));
  const all = share(openBy === null ? predictFit(spec, scenario, model) : null, 'fits');
  if (!spec.forcing) return { station: spec.name, pairs, all, forcing: null, openBy };
  const forced = openBy === null ? predictForcing(spec, scenario, model) : null;
  const forcing = {
    forced: share(forced?.forced ?? null, 'forced'),
    damaged: share(forced?.damaged ?? null, 'damaged'),
    tight: share(forced?.tight ?? null, 'tooTight'),
  };
  return { station: spec.name, pairs, all, forcing, openBy };
}
