import type { Capability } from '../statistics/capability.ts';
import type { Moments } from '../statistics/reading-sums.ts';
import type { Causes } from './causes.ts';
import type { Count } from './counts.ts';
import type { Course } from './course.ts';
import type { Look } from './looks.ts';
import type { MeasureKey, Totals } from './measures.ts';
import type { State } from './state.ts';
import type { StockMeasures } from './supply/stock-measures.ts';
import type { Trace } from './trace/trace.ts';

/** What the readings of a feature at a gauge say of its spread (mm) and capability; null where there are too few. */
export interface FoundCapability extends Moments, Readonly<Record<Capability, number | null>> {
  readonly gauge: string;
  readonly feature: string;
}

/** What one run of one policy under one seed gave. Plain data. */
export interface Outcome {
  readonly policy: string;
  readonly seed: number;
  /** Null where the run gives no value. */
  readonly measures: Readonly<Record<MeasureKey, number | null>>;
  /** Of each measure that is a ratio, what it is the ratio of; without those that the line has nothing of. */
  readonly totals: Readonly<Partial<Record<MeasureKey, Totals>>>;
  /** For each station, the share of the counted time in each state. */
  readonly stateShares: Readonly<Record<string, Readonly<Record<State, number>>>>;
  /** For each limited stock, the share of the counted time with nothing on hand. */
  readonly stockOutShares: Readonly<Record<string, number>>;
  /** For each limited stock, what became of its supply. */
  readonly stocks: Readonly<Record<string, StockMeasures>>;
  /** For each crew, the share of the counted time its members were moving or serving. */
  readonly crewBusyShares: Readonly<Record<string, number>>;
  /** For each feature with limits, at each gauge that reads it. */
  readonly capabilities: readonly FoundCapability[];
  readonly counts: Readonly<Record<Count, number>>;
  /** Why parts were scrapped, and which mating pairs decided that parts did not fit; without what did not come about. */
  readonly causes: Causes;
  /** What the responses of the policy did, by name, where anything is counted of it; left out where nothing is. */
  readonly did?: Readonly<Record<string, number>>;
  /** Events that happened, warm-up included. */
  readonly events: number;
  /** Only when asked for. */
  readonly course?: Course;
  readonly look?: Look;
  readonly trace?: Trace;
}
