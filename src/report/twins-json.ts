import { BINS_A_WINDOW } from '../experiment/rolling.ts';
import { twinSkews } from '../experiment/skew.ts';
import { TOLERANCE } from '../experiment/twin-measures.ts';
import type { Curve, Twins } from '../experiment/twins.ts';
import { type MeanDocument, meanJson } from './estimate-json.ts';
import { keyedUnit } from './keyed-unit.ts';
import { type SkewnessDocument, skewnessJson } from './spread-json.ts';

/** What disturbances cost against undisturbed twins, as data. Numbers are in the units that keys name, unrounded. */
export interface TwinsDocument {
  /** Time that the rolling rate goes back over. */
  readonly rolling_s: number;
  /** A rolling rate that is down by no more than the larger of the two has recovered. */
  readonly tolerance: { readonly share: number; readonly parts: number };
  readonly measures: readonly TwinMeasureDocument[];
  readonly curves: readonly CurveDocument[];
}

interface TwinMeasureDocument {
  readonly key: string;
  readonly name: string;
  readonly unit: string;
  readonly better: 'higher' | 'lower';
  readonly meaning: string;
  readonly source: string;
  readonly rows: readonly (MeanDocument & {
    readonly policy: string;
    readonly mean_skewness: SkewnessDocument;
  })[];
}

interface CurveDocument {
  readonly policy: string;
  /** Of the interval at each point by itself. */
  readonly level: number;
  readonly method: string;
  /** Times since the start of the run, mean over the seeds. */
  readonly disturbances: readonly { readonly name: string; readonly from_s: number; readonly to_s: number }[];
  /** One a window: the window ends at the time. */
  readonly points: readonly {
    readonly time_s: number;
    readonly disturbed_per_h: number;
    readonly lower: number | null;
    readonly upper: number | null;
    readonly twin_per_h: number;
  }[];
}

const curveJson = ({ policy, times, disturbed, twin, shades }: Curve): CurveDocument => ({
  policy,
  level: disturbed[0]!.level,
  method: disturbed[0]!.method,
  disturbances: shades.map(({ name, from, to }) => ({ name, from_s: from, to_s: to })),
  points: times.flatMap((time_s, i) => {
    if (i % BINS_A_WINDOW !== 0) return [];
    const { value, lower, upper } = disturbed[i]!;
    return [{ time_s, disturbed_per_h: value, lower, upper, twin_per_h: twin[i]! }];
  }),
});

export function twinsJson(twins: Twins): TwinsDocument {
  const { rolling, measures, curves } = twins;
  const skews = twinSkews(twins);
  const skewOf = (key: string, policy: string) =>
    skews.find((one) => one.policy === policy && one.measure.key === key)!.mean;
  return {
    rolling_s: rolling.window,
    tolerance: { share: TOLERANCE.share, parts: TOLERANCE.least },
    measures: measures.map(({ measure: { key, name, better, meaning, source }, rows }) => ({
      ...{ key, name, unit: keyedUnit(key), better, meaning, source },
      rows: rows.map(({ policy, estimate }) => ({
        ...{ policy, ...meanJson(estimate), mean_skewness: skewnessJson(skewOf(key, policy)) },
      })),
    })),
    curves: curves.map(curveJson),
  };
}
