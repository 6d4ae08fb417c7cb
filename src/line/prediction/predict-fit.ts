import { clearances, type Sides } from '../../scenario/clearances.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import { boxProbability } from '../../statistics/box-probability.ts';
import type { Combination, Contribution, DimensionModel } from './model.ts';
import { mixedShareBetween } from './predict-feature.ts';

/** How one mating pair should go together; lengths in mm. */
interface PairPrediction {
  readonly clearance: number;
  readonly sd: number;
  readonly fits: number;
  readonly tight: number;
  readonly loose: number;
  readonly from: readonly Contribution[];
}

export interface FitPrediction {
  readonly pairs: readonly PairPrediction[];
  /** Share of the parts whose pairs all fit, at their first attempt, with a mate that was not tried before. */
  readonly all: number;
}

/** Hole minus shaft. */
const gapOf = ({ hole, shaft }: { hole: string; shaft: string }): Combination =>
  new Map([
    [hole, 1],
    [shaft, -1],
  ]);

/** Clearances are correlated where pairs share a source of variation, and the probability that all fit honours it. */
export function predictFit({ fits }: SpecOf<'assemble'>, sides: Sides, model: DimensionModel): FitPrediction {
  const gaps = fits.map(gapOf);
  const limits = fits.map((pair) => clearances(pair, sides));
  const pairs = limits.map(({ least, most }, i) => {
    const of = gaps[i]!;
    return {
      clearance: model.mean(of),
      sd: model.sd(of),
      fits: mixedShareBetween(least, most, of, model),
      tight: mixedShareBetween(Number.NEGATIVE_INFINITY, least, of, model),
      loose: mixedShareBetween(most, Number.POSITIVE_INFINITY, of, model),
      from: model.contributions(of),
    };
  });
  const box = limits.map(({ least, most }) => ({ lower: least, upper: most }));
  const all = model
    .conditions(gaps)
    .reduce((sum, { share, mean, covariance }) => sum + share * boxProbability(box, mean, covariance), 0);
  return { pairs, all };
}
