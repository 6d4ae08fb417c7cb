import type { Actor } from '../kernel/calendar.ts';
import { type Law, samplerOf } from '../kernel/distributions/index.ts';
import type { Bounds } from '../scenario/conditions/bounds.ts';
import type { DemandAmount } from '../scenario/conditions/demand.ts';
import type { StationCondition } from '../scenario/conditions/station.ts';
import type { MatchSpec } from '../scenario/matching.ts';
import type { FeatureSpec } from '../scenario/parts.ts';
import { Claims } from './claims.ts';
import type { Line } from './line.ts';
import { OneIn, type Sampling } from './sampling.ts';
import { type AheadSpec, setAhead } from './set-ahead.ts';
import { setBorrowing } from './set-borrowing.ts';
import { setPriorities, setReinforcement } from './set-crew.ts';
import { setMatching } from './set-matching.ts';
import { sendRejects } from './set-rejects.ts';
import { setReserve } from './set-reserve.ts';
import { setRoute } from './set-route.ts';
import { setSkipping } from './set-skipping.ts';
import { setTool } from './set-tool.ts';
import type { Skipping } from './skip/bypass.ts';
import { watchState } from './watch-state.ts';

/** A reading as a policy sees it. */
export interface Reading {
  readonly value: number;
  /** What the feature should be. */
  readonly aim: number;
  /**
   * What was added to the setting's target when the part was formed; null when its mark does not tell, or when the part
   * was reworked since, so that the reading says what rework left and not what forming gave.
   */
  readonly adjustedThen: number | null;
}

/** What can be watched for, one yes or no at a time. */
export type Sight = 'misfits' | 'off-limits' | 'unread';

/** Takes whether something holds from now on. */
export type Switch = (holds: boolean) => void;

/**
 * All that a policy may see and do. True dimensions, the luck of parts and what disturbs the line are out of
 * reach. Stations, settings and features are called by their names in the scenario.
 */
export class Controls implements Actor {
  readonly name = 'a response of the policy';
  readonly #line: Line;
  readonly #me: number;
  /** What is to be called, by place, and the places that are free again. */
  readonly #due: ((() => void) | null)[] = [];
  readonly #free: number[] = [];
  /** How often a sampler was asked for, by its purpose. */
  readonly #samplers = new Map<string, number>();
  /** What several responses may set for a while, by name. */
  readonly #claims = new Map<string, Claims<unknown>>();

  constructor(line: Line) {
    this.#line = line;
    this.#me = line.calendar.enter(this);
  }

  /** The present time, s. */
  get now(): number {
    return this.#line.calendar.now;
  }

  /** Draws from `law` with a stream of the policy's own. Responses that are alike have streams of their own, too. */
  sampler(law: Law, purpose: string): () => number {
    const before = this.#samplers.get(purpose) ?? 0;
    this.#samplers.set(purpose, before + 1);
    const own = before === 0 ? purpose : `${purpose}/${before + 1}`;
    return samplerOf(law, this.#line.streams.of(`policy/${own}`));
  }

  /** Calls `then` in `delay` seconds. */
  after(delay: number, then: () => void): void {
    const place = this.#free.pop() ?? this.#due.length;
    this.#due[place] = then;
    this.#line.calendar.schedule(this.now + delay, this.#me, 0, place);
  }

  happen(_code: number, stamp: number): void {
    const then = this.#due[stamp]!;
    this.#due[stamp] = null;
    this.#free.push(stamp);
    then();
  }

  /** Tells of each attempt, judgement or reading attempt at a station whether it went wrong. */
  onSight(station: string, sight: Sight, tell: (wrong: boolean) => void): void {
    const gauge = this.#line.gauges.get(station);
    const assembly = this.#line.assemblies.get(station);
    if (sight === 'misfits') assembly!.fitListeners.push(tell);
    else if (sight === 'off-limits') gauge!.judgementListeners.push(tell);
    else (gauge ?? assembly)!.reader!.listeners.push(tell);
  }

  /** Tells of each reading of a feature, wherever it is gauged. */
  onReading(feature: string, setting: string, tell: (reading: Reading) => void): void {
    const { parts, reworked } = this.#line;
    const { remembered } = this.#line.settings.get(setting)!;
    for (const gauge of this.#line.gauges.values()) {
      gauge.readingListeners.push((of, value, row) => {
        if (of.spec.name !== feature) return;
        const then = row === null || parts.get(row, reworked) === 1 ? Number.NaN : parts.get(row, remembered);
        tell({ value, aim: of.spec.aim, adjustedThen: Number.isNaN(then) ? null : then });
      });
    }
  }

  /** Tells of each reading of a feature at one gauge, also of parts whose mark could not be read, mm. */
  onReadingAt(gauge: string, feature: string, tell: (value: number) => void): void {
    const followed = this.#line.features.get(feature)!;
    this.#line.gauges.get(gauge)!.readingListeners.push((of, value) => {
      if (of === followed) tell(value);
    });
  }

  /** What a feature should be, and its limits if it has any, mm. */
  drawn(feature: string): Pick<FeatureSpec, 'aim' | 'limits'> {
    const { aim, limits } = this.#line.features.get(feature)!.spec;
    return { aim, limits };
  }

  /** Lets the station take nothing new until `release`. */
  hold(station: string): void {
    this.#acts();
    this.#line.stations.get(station)!.hold();
  }

  release(station: string): void {
    this.#line.stations.get(station)!.release(this.#line.started);
  }

  /** Works at the share `to` of the station's speed, be it more or less than all, while what comes back is told so, from the next cycle on. */
  slowing(station: string, to: number): Switch {
    return this.#claim(`speed ${station}`, to, 1, (share) => this.#line.stations.get(station)!.slow(share));
  }

  /** Moves what a setting is aimed at by so much while what comes back is told so; adjustments come on top. */
  retargeting(setting: string, by: number): Switch {
    return this.#claim(`target ${setting}`, by, 0, (sum) =>
      this.#line.settings.get(setting)!.setting.retarget(sum, this.now),
    );
  }

  /** Lets whatever takes pieces of a stock take those of `by` while what comes back is told so. */
  substituting(stock: string, by: string): Switch {
    const { substitution } = this.#line;
    return this.#claim<string | null>(`substitute ${stock}`, by, null, (now) => substitution.set(stock, now));
  }

  /** Lets an assembling station put parts aside without one of their mates while what comes back is told so. */
  buildAhead(how: AheadSpec): Switch {
    return this.#noted(setAhead(this.#line, how));
  }

  /** Tells whether what is on hand of a stock is beyond its bounds: at once, and at each change from then on. */
  onLevel(stock: string, bounds: Bounds, tell: Switch): void {
    this.#line.stocks.get(stock)!.onLevel(bounds, tell);
  }

  /** The same of the parts in front of a station. */
  onBuffer(station: string, bounds: Bounds, tell: Switch): void {
    this.#line.stations.get(station)!.inbox!.onLevel(this.#line.calendar, bounds, tell);
  }

  /** The same of finished goods, of orders not served yet, or of those of them that are due. */
  onDemand(of: DemandAmount, bounds: Bounds, tell: Switch): void {
    this.#line.demand!.onLevel(of, bounds, tell);
  }

  /** Tells whether machines of a station have been in certain states for so long: once the line has started, and at each change. */
  onState(condition: StationCondition, tell: Switch): void {
    watchState(this.#line, condition, tell);
  }

  /** Tells whether a calendar works: at once, and at each change from then on. */
  onCalendar(calendar: string, tell: Switch): void {
    const shifts = this.#line.shifts.get(calendar)!;
    shifts.members.push({ goOffShift: () => tell(false), comeOnShift: () => tell(true) });
    tell(shifts.startsOn);
  }

  /** What comes back puts so many pieces of the reserve of a stock on hand, as far as there are. */
  reserve(stock: string): (pieces: number) => void {
    const draw = setReserve(this.#line, stock);
    return (pieces) => {
      this.#acts();
      draw(pieces);
    };
  }

  /** Tells the number of each order of a stock as it is placed. */
  onOrder(stock: string, tell: (order: number) => void): void {
    this.#line.stocks.get(stock)!.onOrder(tell);
  }

  /** Asks for the order of this number, or else the oldest on its way, to come sooner, and says whether it will. */
  expedite(stock: string, order?: number): boolean {
    this.#acts();
    return this.#line.stocks.get(stock)!.expedite(order);
  }

  /**
   * Lets repairs that wait for a spare have the pieces of machines of these stations, which then wait for one
   * themselves: from then on, whenever one comes to wait, or a machine that may be taken from is repaired.
   */
  cannibalise(stock: string, stations: readonly string[]): void {
    setBorrowing(this.#line, stock, stations);
  }

  /** Ends what disturbs the station's settings, features, marks, reader, gauge or speed, and sets drifts back. */
  fix(station: string): void {
    this.#acts();
    for (const it of [...this.#line.curable.get(station)!]) it.cure();
  }

  /** How much a feature changes per unit of a setting, as designed, mm per unit. */
  gain(feature: string, setting: string): number {
    return this.#line.features.get(feature)!.spec.gains?.[setting]?.value ?? 0;
  }

  /** Asks for what is to be added to a setting's target; the setting goes there as far, as finely and as soon as it can. */
  adjust(setting: string, to: number): void {
    this.#acts();
    this.#line.settings.get(setting)!.setting.adjust(to, this.now);
  }

  /** Gauges one part in so many at a gauging station while what comes back is told so. */
  gaugingEvery(station: string, every: number): Switch {
    const gauge = this.#line.gauges.get(station)!;
    return this.#claim<Sampling>(`gauging ${station}`, new OneIn(every), gauge.sampling, (sampling) => {
      gauge.sampling = sampling;
    });
  }

  /** Sends rejects of a gauging or assembling station to pass, scrap or a rework station while what comes back is told so. */
  sendingRejects(station: string, place: string): Switch {
    return this.#doing(`rejects ${station}`, sendRejects(this.#line, station, place));
  }

  /** Sends the parts of a station to another one while what comes back is told so. */
  rerouting(station: string, to: string): Switch {
    return this.#claim<string | null>(`way from ${station}`, to, null, setRoute(this.#line, station));
  }

  /** Lets parts go past a station while what comes back is told so, to be done later or never. */
  skipping(station: string, later: boolean): Switch {
    const how = later ? 'later' : 'never';
    return this.#claim<Skipping | null>(`skip ${station}`, how, null, setSkipping(this.#line, station));
  }

  /** What comes back lets a trimming station renew its tools, by the set-up or maintenance of that name. */
  toolChange(station: string, by?: string): () => void {
    const change = setTool(this.#line, station, by);
    return () => {
      this.#acts();
      change();
    };
  }

  /** Lets a crew serve the calls of these stations first while what comes back is told so. */
  prioritising(crew: string, first: readonly string[]): Switch {
    return this.#claim<readonly string[] | null>(
      `first ${crew}`,
      first,
      null,
      setPriorities(this.#line, crew),
    );
  }

  /** Has so many more of a crew while what comes back is told so. */
  reinforcing(crew: string, by: number): Switch {
    return this.#claim(`more ${crew}`, by, 0, setReinforcement(this.#line, crew));
  }

  /**
   * Lets an assembling station choose among waiting parts by readings while what comes back is told so. Times in s,
   * lengths in mm.
   */
  matching(how: MatchSpec): Switch {
    return this.#doing(`matching ${how.at}`, setMatching(this.#line, how));
  }

  /** One more that does a thing for a while, and how it was before any did. */
  #doing(thing: string, { on, off }: { readonly on: () => void; readonly off: () => void }): Switch {
    return this.#claim(thing, on, off, (act) => act());
  }

  /** One more that sets a thing for a while: where several do, the last of the policy holds. */
  #claim<T>(thing: string, value: T, otherwise: T, set: (value: T) => void): Switch {
    const known = this.#claims.get(thing) as Claims<T> | undefined;
    const claims = known ?? new Claims(otherwise, set);
    if (known === undefined) this.#claims.set(thing, claims as Claims<unknown>);
    return this.#noted(claims.enter(value));
  }

  /** A switch that is noted as an action whenever it comes on. */
  #noted(tell: Switch): Switch {
    return (holds) => {
      if (holds) this.#acts();
      tell(holds);
    };
  }

  /** Notes that a response acts, for who asks how soon a disturbance is answered. */
  #acts(): void {
    this.#line.episodes?.act(this.now);
  }
}
