import type { Scenario } from '../../scenario/scenario.ts';
import type { StationTold } from '../trace/part-lines.ts';

/** Moments of the run, ms since its start: of each the distance to the one before. */
type Moments = readonly number[];

/** One thing that happens to a part but for its moment and its numbers. */
type Rest = { readonly kind: string; readonly station: string };

export interface PlaybackStation extends StationTold {
  /** Where its parts go on to. */
  readonly to: readonly string[];
  readonly names: readonly string[];
  /** Of each of its machines; states by their places in `STATES`. */
  readonly states: readonly { readonly at: Moments; readonly value: readonly number[] }[];
  /** Null where nothing waits in front; its places are null where it is unlimited. */
  readonly buffer: { readonly places: number | null; readonly level: Levels } | null;
}

/** How many there were, each less the number before. */
export interface Levels {
  readonly at: Moments;
  readonly value: readonly number[];
}

interface PlaybackStock {
  readonly name: string;
  readonly level: Levels | null;
  readonly orders: readonly {
    readonly pieces: number;
    readonly placed: number;
    readonly came: number | null;
  }[];
}

/** The jobs of a crew: what they are, each kind once, and of each which kind, when and for how long, ms. */
export interface PlaybackCrew {
  readonly name: string;
  readonly number: number;
  readonly kinds: readonly (readonly [member: number, station: string, machine: string, job: string])[];
  readonly kind: readonly number[];
  readonly sent: Moments;
  readonly way: readonly number[];
  /** From when they came to when they were done; null while it lasts. */
  readonly took: readonly (number | null)[];
}

/** Orders for good assemblies: finished goods, and which parts went to which order when. */
interface PlaybackDemand {
  readonly level: Levels;
  readonly part: readonly number[];
  readonly order: readonly number[];
  readonly at: Moments;
}

/** One time that something was there; ms since the start of the run, null while it lasts. */
export interface Span {
  readonly what: 'disturbance' | 'response';
  readonly name: string;
  readonly begin: number;
  readonly end: number | null;
}

/** A run as a page holds it: all that a trace tells, to the millisecond and to a tenth of a micrometre, written short. */
export interface Playback {
  readonly policy: string;
  readonly seed: number;
  readonly warmUp: number;
  readonly end: number;
  /** In the order in which parts go through them. */
  readonly stations: readonly PlaybackStation[];
  readonly stocks: readonly PlaybackStock[];
  readonly crews: readonly PlaybackCrew[];
  /** Null where nobody orders. */
  readonly demand: PlaybackDemand | null;
  /** What happens to parts, each course once. */
  readonly courses: readonly (readonly Rest[])[];
  /** What parts truly are, each once; `at` is the event at whose moment it came about. */
  readonly truths: readonly (readonly (Rest & { readonly at: string })[])[];
  readonly parts: {
    readonly started: Moments;
    /** Which course, and which truths. */
    readonly course: readonly number[];
    readonly truth: readonly number[];
    /** Of each event, part by part, how long after the event before, or after the start, ms. */
    readonly after: readonly number[];
    /** The numbers of courses and truths, part by part: each less the one before on its track. */
    readonly numbers: readonly number[];
  };
  readonly spans: readonly Span[];
  readonly adjustments: readonly { readonly at: number; readonly text: string }[];
}

/** The stations in the order in which parts go through them, branches behind what they branch from. */
export function flowOrder({ stations }: Pick<Scenario, 'stations'>): readonly string[] {
  const order = new Set<string>();
  const visit = (name: string): void => {
    const spec = stations.find((station) => station.name === name);
    if (spec === undefined || order.has(name)) return;
    order.add(name);
    for (const { to } of spec.to.routes) visit(to);
  };
  for (const { name } of stations) visit(name);
  return [...order];
}
