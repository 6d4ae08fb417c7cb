import { clearances, type Sides } from '../../scenario/clearances.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import type { Combination, Contribution, DimensionModel } from './model.ts';
import { shareOver, shareUnder, shareWithin } from './within.ts';

type Spec = SpecOf<'assemble'>;
type PairSpec = Spec['fits'][number];

/** How one mating pair should go together; lengths in mm. */
interface PairPrediction {
  readonly clearance: number;
  readonly sd: number;
  readonly fits: number;
  readonly tight: number;
  readonly loose: number;
  readonly from: readonly Contribution[];
}

/** What becomes of parts that do not fit at their first attempt where they are pressed, as shares of all parts. */
interface ForcingPrediction {
  /** Pressed together: sound, and spoiled by it. */
  readonly forced: number;
  readonly damaged: number;
  /** Nowhere too loose, but too tight for the press. */
  readonly tight: number;
}

/** The clearance of a pair: hole minus shaft. */
export const gapOf = ({ hole, shaft }: PairSpec): Combination =>
  new Map([
    [hole, 1],
    [shaft, -1],
  ]);

export function predictPair(pair: PairSpec, sides: Sides, model: DimensionModel): PairPrediction {
  const of = gapOf(pair);
  const { least, most } = clearances(pair, sides);
  const conditions = model.conditions([of]);
  return {
    clearance: model.mean(of),
    sd: model.sd(of),
    fits: shareWithin([{ lower: least, upper: most }], conditions),
    tight: shareUnder(least, conditions),
    loose: shareOver(most, conditions),
    from: model.contributions(of),
  };
}

/** Share of the parts whose pairs all have a clearance within limits that are wider by `tighter`, mm, on the tight side. */
function shareOfAll({ fits }: Spec, sides: Sides, model: DimensionModel, tighter: number): number {
  const box = fits.map((pair) => {
    const { least, most } = clearances(pair, sides);
    return { lower: least - tighter, upper: most };
  });
  return shareWithin(box, model.conditions(fits.map(gapOf)));
}

/**
 * Share of the parts whose pairs all fit, at their first attempt, with a mate that was not tried before. Clearances are
 * correlated where pairs share a source of variation, and the probability that all fit honours it.
 */
export const predictFit = (spec: Spec, sides: Sides, model: DimensionModel): number =>
  shareOfAll(spec, sides, model, 0);

/** What the press makes of the others; null where there is none. The tightest pair decides, and it goes as far as its force. */
export function predictForcing(spec: Spec, sides: Sides, model: DimensionModel): ForcingPrediction | null {
  if (!spec.forcing) return null;
  const { limit, stiffness, damages } = spec.forcing;
  const upTo = (tighter: number) => shareOfAll(spec, sides, model, tighter);
  const closed = upTo(limit / stiffness);
  const pressed = Math.max(0, closed - upTo(0));
  return {
    forced: pressed * (1 - damages),
    damaged: pressed * damages,
    tight: Math.max(0, upTo(Number.POSITIVE_INFINITY) - closed),
  };
}
