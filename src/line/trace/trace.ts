import type { StationSpec } from '../../scenario/stations.ts';
import type { GRADES } from '../../standards/mark-grade.ts';
import type { EpisodeRecord } from '../episodes.ts';
import type { State } from '../state.ts';
import type { PartEvent } from './part-events.ts';
import type { Piece } from './piece.ts';
import type { OverTime } from './steps.ts';

interface TracedMachine {
  readonly name: string;
  readonly states: OverTime<State>;
}

export interface TracedStation {
  readonly name: string;
  readonly does: StationSpec['does'];
  readonly machines: readonly TracedMachine[];
  /** Parts in front of it, those on a belt and in a bank included; null where nothing waits in front. */
  readonly buffer: { readonly places: number; readonly level: OverTime<number> } | null;
}

export interface TracedOrder {
  /** From 1; also the number of the lot that it brings. */
  readonly number: number;
  readonly pieces: number;
  readonly placed: number;
  /** When it was last made to come sooner; null if never. */
  readonly expedited: number | null;
  /** When it came on hand, and how many pieces did; null while it is out. */
  readonly came: { readonly at: number; readonly pieces: number } | null;
}

export interface TracedStock {
  readonly name: string;
  /** Pieces on hand; null where it is not limited. */
  readonly level: OverTime<number> | null;
  readonly orders: readonly TracedOrder[];
}

/** One time that one of a crew was sent to a machine; times in s. */
export interface TracedJob {
  /** From 1; beyond the number of the crew, one who was called besides. */
  readonly member: number;
  readonly station: string;
  readonly machine: string;
  /** What was to be done there. */
  readonly job: string;
  readonly called: number;
  readonly sent: number;
  /** When they are there, which may be after the end of the run. */
  readonly came: number;
  /** Null while it is not done. */
  readonly left: number | null;
}

export interface TracedCrew {
  readonly name: string;
  readonly number: number;
  /** In the order in which they were sent. */
  readonly jobs: readonly TracedJob[];
}

/** Orders for good assemblies, and the finished goods they are served from. */
export interface TracedDemand {
  /** Finished goods on hand. */
  readonly level: OverTime<number>;
  /** Order number k stands at place k - 1; `served` is null while it waits. */
  readonly orders: readonly { readonly came: number; readonly served: number | null }[];
  /** Which part went to which order, the oldest first, in the order of time. */
  readonly handed: readonly { readonly part: number; readonly order: number; readonly at: number }[];
}

/** One part in short; its history stands among the events. */
export interface TracedPart {
  /** From 1, in the order in which parts were started: the same part under every policy of a seed. */
  readonly number: number;
  readonly started: number;
  /** Where it was started. */
  readonly station: string;
  /** The piece that it was made from, and its place among the parts of that piece, from 1; null where it just came in. */
  readonly from: { readonly piece: Piece; readonly cavity: number } | null;
  /** How it left; null for one that is still in the line. */
  readonly left: { readonly at: number; readonly as: 'good' | 'scrapped' | 'turned-away' } | null;
}

/** Something that only an all-seeing eye knows: no gauge, reader or policy does. Lengths in mm. */
export type Truth = { readonly at: number; readonly part: number; readonly station: string } & (
  | { readonly kind: 'size'; readonly feature: string; readonly size: number }
  /** A flaw that passed unseen. */
  | { readonly kind: 'flaw'; readonly flaw: 'incomplete' | 'webbed' | 'thin' }
  | { readonly kind: 'mark'; readonly took: boolean; readonly grade: (typeof GRADES)[number] | null }
  /** Clearances of an attempt to assemble, in the order of the station's fits: hole minus shaft. */
  | { readonly kind: 'clearances'; readonly clearances: readonly number[] }
);

/** One time that a response of the policy was in force. */
export interface TracedResponse {
  /** Its place in the policy, from 1. */
  readonly number: number;
  readonly does: string;
  readonly name: string | null;
  readonly began: number;
  /** Null while it lasts. */
  readonly ended: number | null;
}

/** The policy asked for so much to be added to the target of a setting, in its unit, or moved the target by so much. */
export interface Adjustment {
  readonly at: number;
  readonly setting: string;
  readonly how: 'adjust' | 'retarget';
  readonly to: number;
}

/** All that happened in one run, from its start on, the warm-up included. Plain data; times in s since the start. */
export interface Trace {
  readonly policy: string;
  readonly seed: number;
  /** When counting begins, and when the run ends. */
  readonly warmUp: number;
  readonly end: number;
  readonly stations: readonly TracedStation[];
  readonly stocks: readonly TracedStock[];
  readonly crews: readonly TracedCrew[];
  /** Null where nobody orders. */
  readonly demand: TracedDemand | null;
  /** Part number k stands at place k - 1. */
  readonly parts: readonly TracedPart[];
  /** What the line itself could have seen of each part, in the order in which it happened. */
  readonly events: readonly PartEvent[];
  readonly truths: readonly Truth[];
  readonly disturbances: readonly EpisodeRecord[];
  readonly responses: readonly TracedResponse[];
  readonly adjustments: readonly Adjustment[];
}
