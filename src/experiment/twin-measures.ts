import type { Outcome } from '../line/outcome.ts';
import { stockCost } from '../line/supply/stock-measures.ts';
import { depthOf, lossOf, recoveryOf, resilienceOf, type Tolerance } from '../statistics/resilience.ts';
import { BINS_A_WINDOW, type Rolling } from './rolling.ts';

/** A run and its undisturbed twin under the same policy and seed, both with their courses. */
export interface Pair {
  readonly run: Outcome;
  readonly twin: Outcome;
}

/** A rolling rate that is down by no more than this has recovered: a tenth of the twin's, and one assembly in the window. */
export const TOLERANCE: Tolerance = { share: 0.1, least: 1 };

/** What a run is measured by against its twin: its key ends in its unit where it has one. */
export interface TwinMeasure {
  readonly key: string;
  readonly name: string;
  /** Unit it is shown in, and the factor from the keyed unit to it. */
  readonly shown: { readonly unit: string; readonly factor: number };
  readonly better: 'higher' | 'lower';
  /** The least and the largest value it can have, if there are such. */
  readonly least?: number;
  readonly most?: number;
  /** Shown only where some run has a value of it that is not zero. */
  readonly seldom?: true;
  readonly meaning: string;
  /** Where the definition is from. */
  readonly source: string;
  /** Null where the run gives no value. */
  readonly of: (pair: Pair, rolling: Rolling) => number | null;
}

const BRUNEAU = 'Bruneau et al. (2003), Earthquake Spectra 19, 733-752';
const CIMELLARO = 'Cimellaro, Reinhorn and Bruneau (2010), Engineering Structures 32, 3639-3649';
const COUNTED = 'a count of the run against that of its twin';

const courses = ({ run, twin }: Pair) => [run.course!.good, twin.course!.good, BINS_A_WINDOW] as const;
const caused = (key: 'good' | 'scrapped' | 'reworked', { run, twin }: Pair) =>
  run.counts[key] - twin.counts[key];
/** Null stays null. */
const times = (value: number | null, factor: number) => (value === null ? null : value * factor);

function costOf({ stocks }: Outcome): number | null {
  const costs = Object.values(stocks).flatMap((own) => stockCost(own) ?? []);
  return costs.length > 0 ? costs.reduce((sum, cost) => sum + cost, 0) : null;
}

/** What disturbances cost, each measure defined here and nowhere else, over the counted time of a run. */
export const TWIN_MEASURES = [
  {
    key: 'undisturbed_throughput_per_h',
    name: 'undisturbed',
    shown: { unit: 'good /h', factor: 1 },
    better: 'higher',
    least: 0,
    meaning:
      'good assemblies per hour of the twin. The other measures do not hold what a policy costs that nothing disturbs',
    source: 'the throughput of the twin',
    of: ({ twin }) => twin.measures.throughput_per_h,
  },
  {
    key: 'output_lost_parts',
    name: 'output lost',
    shown: { unit: 'good', factor: 1 },
    better: 'lower',
    meaning: 'good assemblies of the twin less those of the run: what was made up by its end is not lost',
    source: COUNTED,
    of: (pair) => 0 - caused('good', pair),
  },
  {
    key: 'depth_per_h',
    name: 'depth',
    shown: { unit: 'good /h', factor: 1 },
    better: 'lower',
    least: 0,
    meaning: 'largest shortfall of the rolling rate against that of the twin',
    source: `what is left is the robustness of ${BRUNEAU}`,
    of: (pair, { bin }) => times(depthOf(...courses(pair)), 3600 / bin),
  },
  {
    key: 'time_to_notice_s',
    name: 'time to notice',
    shown: { unit: 'min', factor: 1 / 60 },
    better: 'lower',
    least: 0,
    meaning:
      'from the beginning of a disturbance to the first action of a response while it lasts, the mean over those ' +
      'so answered; a response that acts all the time does so whether it noticed or not',
    source: 'a time between two events of the run',
    of: ({ run }) => {
      const times = run.course!.episodes.flatMap(({ begin, answered }) =>
        answered === null ? [] : [answered - begin],
      );
      return times.length > 0 ? times.reduce((sum, time) => sum + time, 0) / times.length : null;
    },
  },
  {
    key: 'time_to_recover_s',
    name: 'time to recover',
    shown: { unit: 'h', factor: 1 / 3600 },
    better: 'lower',
    least: 0,
    meaning:
      'longest time that the rolling rate fell short of that of the twin by more than a tenth and more than one ' +
      'assembly, from the first assembly missed on; 0 where it never does, no value where it still does at the end. ' +
      'A rolling rate is back up to its window later than the line',
    source: `the time that the rapidity of ${BRUNEAU} is by`,
    of: (pair, { bin }) => times(recoveryOf(...courses(pair), TOLERANCE), bin),
  },
  {
    key: 'lasting_loss_parts',
    name: 'lasting loss',
    shown: { unit: 'good', factor: 1 },
    better: 'lower',
    least: 0,
    meaning:
      'the loss triangle, how deep times how long: area between the two rolling rates where that of the run is the ' +
      'lower; what is made up later is not set against it',
    source: `the resilience loss of ${BRUNEAU}`,
    of: (pair) => lossOf(...courses(pair)),
  },
  {
    key: 'resilience',
    name: 'resilience',
    shown: { unit: '%', factor: 100 },
    better: 'higher',
    least: 0,
    most: 1,
    meaning: 'what the lasting loss leaves of the output of the twin',
    source: CIMELLARO,
    of: (pair) => resilienceOf(...courses(pair)),
  },
  {
    key: 'scrap_caused_parts',
    name: 'scrap caused',
    shown: { unit: 'parts', factor: 1 },
    better: 'lower',
    meaning: 'parts scrapped in the run less those of the twin',
    source: COUNTED,
    of: (pair) => caused('scrapped', pair),
  },
  {
    key: 'rework_caused_parts',
    name: 'rework caused',
    seldom: true,
    shown: { unit: 'parts', factor: 1 },
    better: 'lower',
    meaning: 'parts sent to rework at least once in the run less those of the twin',
    source: COUNTED,
    of: (pair) => caused('reworked', pair),
  },
  {
    key: 'stock_cost_caused',
    name: 'stock cost caused',
    shown: { unit: 'money', factor: 1 },
    better: 'lower',
    meaning:
      'what the stocks that name a price cost in the run less what they cost in the twin; a run that makes less ' +
      'buys less, so it may be negative',
    source: COUNTED,
    of: ({ run, twin }) => {
      const [own, other] = [costOf(run), costOf(twin)];
      return own === null || other === null ? null : own - other;
    },
  },
] as const satisfies readonly TwinMeasure[];

export type TwinKey = (typeof TWIN_MEASURES)[number]['key'];
