import type { CalendarSpec } from './calendars.ts';
import type { CarrierSpec } from './carriers.ts';
import type { CrewSpec } from './crew.ts';
import type { DemandSpec } from './demand.ts';
import type { DisturbanceSpec } from './disturbances.ts';
import type { PartSpec } from './parts.ts';
import type { ResponseSpec } from './responses.ts';
import type { SizingSpec } from './sizings.ts';
import type { StationSpec } from './stations.ts';
import type { StockSpec } from './stocks.ts';
import type { WarmUpBy } from './warm-up.ts';

export interface PolicySpec {
  readonly name: string;
  readonly responses: readonly ResponseSpec[];
}

/** Disturbances that come together, by their names. */
export interface CaseSpec {
  readonly name: string;
  readonly disturbances: readonly string[];
}

/** A checked scenario: plain data, times in seconds, lengths in millimetres, shares from 0 to 1. */
export interface Scenario {
  readonly title: string;
  readonly about: string;
  readonly run: {
    readonly warmUp: number;
    readonly warmUpBy: WarmUpBy;
    readonly length: number;
    readonly seeds: number;
    /** Time that a rolling rate goes back over, s. */
    readonly rolling?: number | undefined;
  };
  readonly stocks: readonly StockSpec[];
  readonly parts: readonly PartSpec[];
  readonly stations: readonly StationSpec[];
  readonly crew: readonly CrewSpec[];
  readonly carriers: readonly CarrierSpec[];
  readonly calendars: readonly CalendarSpec[];
  /** Null where all that is made is taken. */
  readonly demand: DemandSpec | null;
  readonly disturbances: readonly DisturbanceSpec[];
  /** Empty where the one case is all disturbances. */
  readonly cases: readonly CaseSpec[];
  /** The first is the one the others are compared with. */
  readonly policies: readonly PolicySpec[];
  /** Questions of how much is enough; left out where none is asked. */
  readonly sizings?: readonly SizingSpec[] | undefined;
}
