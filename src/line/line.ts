import { Calendar } from '../kernel/calendar.ts';
import { Streams } from '../kernel/streams.ts';
import type { ReadingSums } from '../statistics/reading-sums.ts';
import type { Breakdown } from './breakdown.ts';
import type { Carriers } from './carriers.ts';
import type { Crew } from './crew.ts';
import type { Demand } from './demand.ts';
import type { Detour } from './detour.ts';
import type { Episodes } from './episodes.ts';
import { Exit } from './exit.ts';
import type { Feature } from './features.ts';
import type { Flaw } from './flaw.ts';
import type { FormingFlaws } from './forming-flaws.ts';
import type { Machine } from './machine.ts';
import type { Assemble } from './operations/assemble.ts';
import type { Gauge } from './operations/gauge.ts';
import type { Mark } from './operations/mark.ts';
import { PartTable } from './part-table.ts';
import type { Place } from './place.ts';
import type { Rejects } from './rejects.ts';
import type { ScrapCause } from './scrap-causes.ts';
import { ScrapPile } from './scrap-pile.ts';
import type { Setting } from './setting.ts';
import type { Shifts } from './shifts.ts';
import type { Bypass } from './skip/bypass.ts';
import type { Spare } from './spare.ts';
import type { Station } from './station.ts';
import type { Stock } from './stock.ts';
import { Substitution } from './substitution.ts';
import { Tally } from './tally.ts';
import type { Task } from './task.ts';

/** Something under way at a station that a fix there ends. */
export interface Curable {
  cure(): void;
}

/** A forming setting with the column that remembers it and the station it belongs to. */
export interface SettingOnLine {
  readonly setting: Setting;
  readonly remembered: number;
  readonly station: string;
}

/** Whoever takes pieces of a stock. */
interface Takes {
  readonly stock: string;
  /** Pieces taken up to now. */
  readonly taken: () => number;
  /** Integral of those taken and not used yet, piece-seconds. */
  readonly heldSeconds: () => number;
}

/** A line ready to run: everything the scenario describes, wired together. */
export class Line {
  readonly calendar = new Calendar();
  readonly parts = new PartTable();
  readonly tally = new Tally();
  readonly streams: Streams;
  readonly stations = new Map<string, Station>();
  readonly stocks = new Map<string, Stock>();
  readonly crews = new Map<string, Crew>();
  readonly carriers = new Map<string, Carriers>();
  readonly shifts = new Map<string, Shifts>();
  /** Null where all that is made is taken. */
  demand: Demand | null = null;
  readonly settings = new Map<string, SettingOnLine>();
  readonly features = new Map<string, Feature>();
  /** Stations again, by what can be asked of them. */
  readonly formingFlaws = new Map<string, FormingFlaws>();
  readonly gauges = new Map<string, Gauge>();
  /** What each gauge read of each feature that has limits. */
  readonly readings: { readonly gauge: string; readonly feature: Feature; readonly sums: ReadingSums }[] = [];
  readonly assemblies = new Map<string, Assemble>();
  readonly marks = new Map<string, Mark>();
  /** Who takes pieces of which stock. */
  readonly takers: Takes[] = [];
  /** What is taken in the place of what. */
  readonly substitution = new Substitution();
  /** The ways in which each station breaks down, those of each of its machines. */
  readonly breakdowns = new Map<string, Breakdown[]>();
  /** What breakdowns need to be repaired. */
  readonly spares: Spare[] = [];
  /** What machines of trimming stations do that ends with a new tool. */
  readonly toolChanges: { readonly machine: Machine; readonly task: Task }[] = [];
  /** What the responses of a policy did so far, where anything is counted of it: numbers by name. */
  readonly done = new Map<string, () => number>();
  /** Ways on from stations, and entrances of stations, that a policy of the scenario may turn. */
  readonly detours = new Map<string, Detour>();
  readonly bypasses = new Map<string, Bypass>();
  /** How many parts each source brought into being. */
  readonly starts: (() => number)[] = [];
  /** Null where no part can have a flaw that is not seen at once. */
  flaw: Flaw | null = null;
  /** What is wrong at each station that a fix would end. */
  readonly curable = new Map<string, Set<Curable>>();
  /** Notes disturbances and what answers them; null where nobody asks. */
  episodes: Episodes | null = null;
  readonly good = new Exit(this.calendar, this.parts, this.tally, 'good');
  readonly scrap = new Exit(this.calendar, this.parts, this.tally, 'scrapped');
  /** All ways to scrap. */
  readonly piles: ScrapPile[] = [];
  /** Whether an arrival that finds no room is turned away anywhere. */
  turnsAway = false;
  readonly turnedAway = new Exit(this.calendar, this.parts, this.tally, 'turnedAway');
  /** Whether stations may begin: not while a policy is put to work. */
  started = false;
  /** Column: 1 once the part was sent to a rework station. */
  reworked!: number;
  /** Where rejects go that are sent to a place by its name: pass, scrap or a rework station; `next` is for pass. */
  rejectsTo!: (place: string, station: string, cause: ScrapCause) => Rejects;

  constructor(seed: number) {
    this.streams = new Streams(seed);
  }

  /** Where parts that are sent to a station enter it, or go past it. */
  entrance(station: string): Place {
    return this.bypasses.get(station) ?? this.stations.get(station)!.inbox!;
  }

  /** The way to scrap from a station for one cause. */
  scrapFor(station: string, cause: ScrapCause): ScrapPile {
    const found = this.piles.find((pile) => pile.station === station && pile.cause === cause);
    if (found) return found;
    const pile = new ScrapPile(station, cause, this.scrap);
    this.piles.push(pile);
    return pile;
  }

  /** Lets a station begin if it can now and could not before. */
  wake(station: Station): void {
    if (this.started) station.wake();
  }

  /** Sets every station to work and lets the first orders go out. */
  start(): void {
    for (const shifts of this.shifts.values()) shifts.open();
    for (const stock of this.stocks.values()) stock.open();
    this.demand?.open();
    this.started = true;
    for (const { machines } of this.stations.values()) for (const machine of machines) machine.wake();
  }
}
