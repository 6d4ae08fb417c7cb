import { clearances, type Sides } from '../../scenario/clearances.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import type { Combination, Contribution, DimensionModel } from './model.ts';
import { shareWithin } from './within.ts';

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
    const conditions = model.conditions([of]);
    const between = (lower: number, upper: number) => shareWithin([{ lower, upper }], conditions);
    return {
      clearance: model.mean(of),
      sd: model.sd(of),
      fits: between(least, most),
      tight: between(Number.NEGATIVE_INFINITY, least),
      loose: between(most, Number.POSITIVE_INFINITY),
      from: model.contributions(of),
    };
  });
  const box = limits.map(({ least, most }) => ({ lower: least, upper: most }));
  const all = shareWithin(box, model.conditions(gaps));
  return { pairs, all };
}
