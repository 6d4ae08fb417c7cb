import { MEASURES, type Measure, type MeasureKey } from '../../line/measures.ts';
import { type Estimate, possible } from '../../statistics/estimate.ts';
import { meanInterval } from '../../statistics/mean-interval.ts';
import { LEVEL } from '../comparison.ts';
import type { Design } from './design.ts';
import { type Effects, effectsOf } from './effects.ts';
import type { Factor } from './factor.ts';
import { type LevelMean, levelMeans } from './level-means.ts';
import type { VariedRun } from './plan-varied.ts';

/** What a varied experiment says by one measure. */
export interface Varied {
  readonly factors: readonly Factor[];
  readonly design: Design;
  /** What was followed; null where the policy was varied. */
  readonly policy: string | null;
  readonly key: MeasureKey;
  readonly measure: Measure;
  /** Runs of each point. */
  readonly seeds: number;
  readonly runs: number;
  /** By point; null where no run gives a value. Each interval holds by itself at LEVEL. */
  readonly estimates: readonly (Estimate | null)[];
  /** The point of the best mean, the first of several; null where no run gives a value. */
  readonly best: number | null;
  readonly effects: Effects;
  /** The mean over all points with one level, or two; none where the points are spread over ranges. */
  readonly means: readonly LevelMean[];
}

interface Asked {
  readonly factors: readonly Factor[];
  readonly design: Design;
  readonly policy: string | null;
  readonly key: MeasureKey;
}

/** By point, the values of its runs in order of seed; null where one gives none. */
function valuesOf({ points }: Design, runs: readonly VariedRun[], key: MeasureKey): (number | null)[][] {
  const values = points.map((): (number | null)[] => []);
  for (const { point, outcome } of runs) values[point]!.push(outcome.measures[key]);
  return values;
}

/**
 * Says what the factors do to a measure.
 * @param runs of every point in order of seed
 */
export function varied({ factors, design, policy, key }: Asked, runs: readonly VariedRun[]): Varied {
  const measure: Measure = MEASURES.find((one) => one.key === key)!;
  const values = valuesOf(design, runs, key);
  const canBe = (estimate: Estimate) => possible(estimate, { least: 0, ...measure });
  const estimates = values.map((own) => {
    const given = own.filter((value) => value !== null);
    return given.length > 0 ? canBe(meanInterval(given, LEVEL)) : null;
  });
  const sign = measure.better === 'higher' ? 1 : -1;
  const goodness = estimates.map((own) => (own ? sign * own.value : Number.NEGATIVE_INFINITY));
  const top = goodness.reduce((most, own) => Math.max(most, own), Number.NEGATIVE_INFINITY);
  const whole = values.every((own) => own.every((value) => value !== null)) ? (values as number[][]) : null;
  return {
    ...{ factors, design, policy, key, measure, estimates },
    seeds: values[0]!.length,
    runs: runs.length,
    best: top === Number.NEGATIVE_INFINITY ? null : goodness.indexOf(top),
    effects: whole === null ? { kind: 'none' } : effectsOf(factors, design, whole),
    means: (whole === null ? [] : levelMeans(factors, design, whole)).map((own) => ({
      ...own,
      estimate: canBe(own.estimate),
    })),
  };
}
