import type { EpisodeRecord } from '../line/episodes.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { type Estimate, possible } from '../statistics/estimate.ts';
import { meanInterval } from '../statistics/mean-interval.ts';
import { rollingLevel } from '../statistics/resilience.ts';
import { LEVEL } from './comparison.ts';
import { BINS_A_WINDOW, type Rolling, rollingOf } from './rolling.ts';
import { type Pair, TWIN_MEASURES, type TwinKey, type TwinMeasure } from './twin-measures.ts';

/** One run against its twin. */
interface TwinRun {
  readonly policy: string;
  readonly seed: number;
  /** Null where the run gives no value. */
  readonly values: Readonly<Record<TwinKey, number | null>>;
  /** How often a disturbance began, and how many of these times a response acted while it lasted. */
  readonly disturbed: number;
  readonly answered: number;
}

interface TwinComparison {
  readonly measure: TwinMeasure;
  /** Without the policies of which no run gives a value. Each interval holds by itself at LEVEL. */
  readonly rows: readonly { readonly policy: string; readonly estimate: Estimate }[];
}

/** From when to when a disturbance was there, mean over the seeds, s since the start of the run. */
interface Shade {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

/** The mean course of a policy: rates in good assemblies per hour, over the rolling window that ends at each time. */
export interface Curve {
  readonly policy: string;
  /** s since the start of the run, a bin apart. */
  readonly times: readonly number[];
  /** With an interval at LEVEL at each time by itself. */
  readonly disturbed: readonly Estimate[];
  readonly twin: readonly number[];
  readonly shades: readonly Shade[];
}

/** What disturbances cost each policy, against the same seeds without them. */
export interface Twins {
  readonly rolling: Rolling;
  readonly seeds: number;
  /** Only the measures that some run gives a value for. */
  readonly measures: readonly TwinComparison[];
  readonly curves: readonly Curve[];
  /** In the order of the pairs. */
  readonly runs: readonly TwinRun[];
}

function twinRun(pair: Pair, rolling: Rolling): TwinRun {
  const { policy, seed, course } = pair.run;
  const values = Object.fromEntries(TWIN_MEASURES.map(({ key, of }) => [key, of(pair, rolling)]));
  return {
    policy,
    seed,
    values: values as Record<TwinKey, number | null>,
    disturbed: course!.episodes.length,
    answered: course!.episodes.filter(({ answered }) => answered !== null).length,
  };
}

function compared(
  measure: (typeof TWIN_MEASURES)[number],
  policies: readonly string[],
  runs: readonly TwinRun[],
) {
  const { least, most }: TwinMeasure = measure;
  const rows = policies.flatMap((policy) => {
    const own = runs.flatMap((run) => (run.policy === policy ? (run.values[measure.key] ?? []) : []));
    return own.length > 0 ? [{ policy, estimate: possible(meanInterval(own, LEVEL), { least, most }) }] : [];
  });
  return { measure, rows };
}

/** Where each disturbance came equally often in every run, each time; else as often as it came in all of them. */
function shadesOf(episodes: readonly (readonly EpisodeRecord[])[], end: number): Shade[] {
  const names = [...new Set(episodes.flat().map(({ name }) => name))];
  return names.flatMap((name) => {
    const each = episodes.map((own) => own.filter((episode) => episode.name === name));
    const often = Math.min(...each.map((own) => own.length));
    const mean = (of: (own: readonly EpisodeRecord[]) => number) =>
      each.reduce((sum, own) => sum + of(own), 0) / each.length;
    return Array.from({ length: often }, (_, i) => ({
      name,
      from: mean((own) => own[i]!.begin),
      to: mean((own) => own[i]!.end ?? end),
    }));
  });
}

function curveOf(
  policy: string,
  pairs: readonly Pair[],
  { warmUp, length }: Scenario['run'],
  rolling: Rolling,
): Curve {
  const { bin } = rolling;
  const perHour = (good: ArrayLike<number>) =>
    rollingLevel(good, BINS_A_WINDOW).map((level) => (level * 3600) / bin);
  const own = pairs.map(({ run }) => perHour(run.course!.good));
  const twins = pairs.map(({ twin }) => perHour(twin.course!.good));
  const places = Array.from(own[0]!, (_, i) => i);
  return {
    policy,
    times: places.map((i) => warmUp + (i + BINS_A_WINDOW) * bin),
    disturbed: places.map((i) => {
      const estimate = meanInterval(
        own.map((rates) => rates[i]!),
        LEVEL,
      );
      return { ...estimate, lower: estimate.lower === null ? null : Math.max(0, estimate.lower) };
    }),
    twin: places.map((i) => twins.reduce((sum, rates) => sum + rates[i]!, 0) / twins.length),
    shades: shadesOf(
      pairs.map(({ run }) => run.course!.episodes),
      warmUp + length,
    ),
  };
}

/**
 * Holds runs against their undisturbed twins.
 * @param policies names in the scenario's order
 * @param pairs every policy under the same seeds, in order of seed, with courses
 */
export function compareTwins(
  policies: readonly string[],
  pairs: readonly Pair[],
  run: Scenario['run'],
): Twins {
  const rolling = rollingOf(run);
  const runs = pairs.map((pair) => twinRun(pair, rolling));
  return {
    rolling,
    seeds: runs.filter(({ policy }) => policy === policies[0]).length,
    measures: TWIN_MEASURES.map((measure) => compared(measure, policies, runs)).filter(
      ({ rows }) => rows.length > 0,
    ),
    curves: policies.map((policy) =>
      curveOf(
        policy,
        pairs.filter((pair) => pair.run.policy === policy),
        run,
        rolling,
      ),
    ),
    runs,
  };
}
