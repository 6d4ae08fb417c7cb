import type { Actor, Calendar } from '../kernel/calendar.ts';
import { samplerOf } from '../kernel/distributions/index.ts';
import { standardNormal } from '../kernel/distributions/normal.ts';
import type { Stream, Streams } from '../kernel/streams.ts';
import type { StockSpec } from '../scenario/stocks.ts';
import { Level } from './supply/level.ts';
import { Lots } from './supply/lots.ts';
import type { Order } from './supply/order.ts';
import { Orders } from './supply/orders.ts';
import { type Rule, ruleOf } from './supply/rule.ts';
import { ShelfLife } from './supply/shelf-life.ts';
import { StockTally } from './supply/stock-tally.ts';
import { Variation } from './variation.ts';

/** What one station, or one machine of it, has come to wait for of a stock. */
export interface Want {
  /** Pieces that something waits for. */
  owed: number;
  /** Whether it takes pieces of another stock just now, in the place of which this one stands or may stand. */
  idle: boolean;
  /** When it came to wait for the first of them, by number among all that did. */
  turn: number;
}

/** A station or a repair that takes pieces. */
interface Taker {
  /** Pieces have come. */
  wake(): void;
  /** Whether a part waits at its door because it cannot start: where it has no places in front. */
  readonly keepsOut: boolean;
}

const REVIEW = 0;
const EXPIRE = 1;
const LEVEL = 2;

/** Bought-in material: what is on hand, by lots, and what it is replenished by. */
export class Stock implements Actor {
  readonly name: string;
  readonly limited: boolean;
  onHand: number;
  readonly initial: number;
  readonly tally = new StockTally();
  /** Null where it is never ordered. */
  readonly orders: Orders | null;
  readonly lots = new Lots();
  /** Stations that may be waiting for a delivery, and what each of their machines or buffers waits for. */
  private readonly takers: { readonly station: Taker; readonly wants: Want[] }[] = [];
  private readonly calendar: Calendar;
  private readonly me: number;
  private readonly rule: Rule | null;
  private readonly shrinks: StockSpec['shrinkage'];
  private readonly streams: Streams;
  private readonly variations = new Map<string, Variation>();
  private readonly shelfLife: ShelfLife | null;
  private readonly unsoundLuck: Stream;
  /** Whether pieces that come go to whoever has waited longest, and not to the stations in their order. */
  private inTurn = false;
  private turns = 0;
  /** Pieces that something waits for, at all stations together. */
  private owed = 0;
  /** Whether a piece was asked for in vain since the last delivery. */
  private short = false;
  /** Since when none is on hand, if none is, s. */
  private since = 0;
  /** Sum over all changes of what is on hand of the change times the clock, piece-seconds: its integral follows from that. */
  private moments = 0;
  /** A piece taken brings nothing about while more than so many are on hand. */
  private alert = 0;
  /** What a policy goes by; null where none does. */
  private levels: Level[] | null = null;

  constructor(spec: StockSpec, calendar: Calendar, streams: Streams) {
    this.name = spec.name;
    this.limited = spec.unlimited !== true;
    this.initial = this.limited ? spec.onHand! : Number.POSITIVE_INFINITY;
    this.onHand = this.initial;
    this.streams = streams;
    this.calendar = calendar;
    this.me = calendar.enter(this);
    this.rule = ruleOf(spec);
    this.shrinks = spec.shrinkage;
    this.orders = this.rule
      ? new Orders(spec, calendar, streams, this.tally, (order) => this.deliver(order))
      : null;
    const of = (purpose: string) => streams.of(`stock/${spec.name}/${purpose}`);
    this.shelfLife = spec.shelfLife ? new ShelfLife(samplerOf(spec.shelfLife, of('shelf-life'))) : null;
    this.unsoundLuck = of('discovery');
    if (this.limited) this.lots.add(0, this.initial, 0, this.expiry(0));
  }

  /** Looks at the stock for the first time, and places the orders that the rule asks for. */
  open(): void {
    this.replenish();
    if (this.rule?.review != null) this.calendar.schedule(this.rule.review, this.me, REVIEW, 0);
  }

  /**
   * Enters a station, or one more machine of it, that takes pieces and is told when they come.
   * @param idle whether it takes none yet
   */
  want(station: Taker, idle = false): Want {
    const want = { owed: 0, idle, turn: 0 };
    const known = this.takers.find((taker) => taker.station === station);
    if (known) known.wants.push(want);
    else this.takers.push({ station, wants: [want] });
    return want;
  }

  /** Enters a repair that takes pieces: from then on all that wait for the stock are served in turn. */
  wantInTurn(repair: Taker): Want {
    this.inTurn = true;
    return this.want(repair);
  }

  /**
   * What varies of the material under a name: a term for each lot and one for each piece, mm. Whoever asks by the
   * same name shares the draws, so that piece number k is the same wherever it is used.
   */
  variation(name: string, lotSd: number, ownSd: number): Variation {
    const known = this.variations.get(name);
    if (known) return known;
    const z = (purpose: string) => standardNormal(this.streams.of(`stock/${this.name}/${name}/${purpose}`));
    const variation = new Variation(lotSd, ownSd, z);
    this.variations.set(name, variation);
    return variation;
  }

  /** How much of the shrinkage of parts depends on the delivery of sheet; null where it does not. */
  get shrinkage(): Variation | null {
    const shrinkage = this.shrinks;
    return shrinkage ? this.variation('sheet shrinkage', shrinkage.lotSd, 0) : null;
  }

  /** Takes one piece, which must be on hand, and returns the number of its lot. */
  take(want: Want): number {
    this.tally.taken++;
    if (!this.limited) return 0;
    this.moments -= this.calendar.now;
    this.onHand--;
    const lot = this.lots.take();
    if (want.owed > 0) this.served(want);
    if (this.onHand <= this.alert) this.attend();
    return lot;
  }

  /** None is on hand, and so many wait for one. */
  lack(want: Want, waiting: number): void {
    this.note(want, waiting);
    this.setAlert();
    if (this.rule?.backorders) this.watch(this.rule);
  }

  /** What waits for pieces turns to another stock, or back to this one. */
  turn(want: Want, away: boolean): void {
    want.idle = away;
    this.forgo(want);
  }

  /** What was waited for has come another way. */
  forgo(want: Want): void {
    this.owed -= want.owed;
    want.owed = 0;
    this.setAlert();
  }

  /** None is on hand, and what wanted one goes without. */
  refuse(): void {
    this.tally.refused++;
    this.fallShort();
  }

  /**
   * Tells whether fewer than `below` pieces are on hand: at once, and at each change from then on; once they are, until
   * at least `until` are there.
   */
  onLevel(below: number, until: number, tell: (low: boolean) => void): void {
    const level = new Level(below, until, this.onHand, tell);
    this.levels = [...(this.levels ?? []), level];
    this.setAlert();
    tell(level.low);
  }

  happen(code: number): void {
    if (code === EXPIRE) return this.expire();
    if (code === LEVEL) return this.tellLevels();
    this.replenish();
    this.calendar.schedule(this.calendar.now + this.rule!.review!, this.me, REVIEW, 0);
  }

  /** One supplier, or all of them, deliver nothing until as many `supply` calls; what falls due comes then. */
  cutOff(supplier?: string): void {
    this.orders?.cutOff(supplier);
  }

  supply(supplier?: string): void {
    this.orders?.supply(supplier);
  }

  /** Tells of each order as it is placed. */
  onOrder(tell: () => void): void {
    this.orders?.listeners.push(tell);
  }

  /** Speeds up the oldest order that is on its way, if that can be, and says whether it did. */
  expedite(): boolean {
    return this.orders?.expedite() ?? false;
  }

  /** The counts up to now. */
  counted(): StockTally {
    const { tally, onHand } = this;
    const { now } = this.calendar;
    if (onHand === 0) {
      this.lookAtDoors();
      tally.outSeconds += now - this.since;
      this.since = now;
    }
    tally.onHandSeconds = onHand * now - this.moments;
    this.orders?.settle();
    return tally.copy();
  }

  /** What is on hand and on order, less what is owed where that counts. */
  private get position(): number {
    return this.onHand + this.orders!.onOrder - (this.rule!.backorders ? this.owed : 0);
  }

  /** Orders what is missing, where the stock is looked at all the time. */
  private watch({ review, orderAt }: Rule): void {
    if (review === null && this.position <= orderAt) this.replenish();
  }

  private replenish(): void {
    const { rule, orders } = this;
    if (!rule || !orders) return;
    while (this.position <= rule.orderAt && !(rule.oneAtATime && orders.out.size > 0)) {
      orders.place(rule.quantity(this.position));
    }
    this.setAlert();
  }

  /** What a piece taken has brought about: an order, the last piece gone, a piece behind it that is not sound. */
  private attend(): void {
    if (this.onHand === 0) this.since = this.calendar.now;
    if (this.lots.unsound > 0) this.discover();
    if (this.rule !== null) this.watch(this.rule);
    if (this.levels !== null) this.lookAt(this.levels);
  }

  /** By way of the calendar, even though it takes no time: who takes a piece, or brings it, is not done yet. */
  private lookAt(levels: readonly Level[]): void {
    if (levels.some((level) => level.isCrossed(this.onHand)))
      this.calendar.schedule(this.calendar.now, this.me, LEVEL, 0);
  }

  private tellLevels(): void {
    for (const level of this.levels!) if (level.isCrossed(this.onHand)) level.cross();
    this.setAlert();
  }

  private setAlert(): void {
    const { rule } = this;
    let alert = 0;
    if (this.lots.unsound > 0) alert = Number.POSITIVE_INFINITY;
    else if (rule !== null && rule.review === null)
      alert = Math.max(0, rule.orderAt - this.orders!.onOrder + (rule.backorders ? this.owed : 0));
    if (this.levels !== null)
      for (const { low, below } of this.levels) if (!low) alert = Math.max(alert, below - 1);
    this.alert = alert;
  }

  /** So many more pieces are on hand from now on, or fewer. */
  private change(pieces: number): void {
    const { now } = this.calendar;
    if (this.onHand === 0) this.tally.outSeconds += now - this.since;
    this.moments += pieces * now;
    this.onHand += pieces;
    this.since = now;
    if (this.levels !== null) this.lookAt(this.levels);
  }

  private deliver({ number, brought, unsound, found }: Order): void {
    const { tally } = this;
    const pieces = brought - found;
    if (this.onHand === 0) this.lookAtDoors();
    this.change(pieces);
    tally.delivered += pieces;
    tally.cycles++;
    if (this.short) tally.shortCycles++;
    if (pieces > 0) this.short = false;
    this.lots.add(number, pieces, unsound - found, this.expiry(number));
    if (this.lots.unsound > 0) this.discover();
    this.setAlert();
    for (const { station } of this.inTurn ? this.byTurn() : this.takers) station.wake();
    // Not all came that was ordered, or this was the one order that may be out.
    this.watch(this.rule!);
  }

  /** When a lot that comes now is too old, s; it will be thrown away then. */
  private expiry(lot: number): number {
    if (!this.shelfLife) return Number.POSITIVE_INFINITY;
    const at = this.calendar.now + this.shelfLife.ofLot(lot);
    this.calendar.schedule(at, this.me, EXPIRE, lot);
    return at;
  }

  private expire(): void {
    const old = this.lots.expire(this.calendar.now);
    if (old === 0) return;
    this.change(-old);
    this.tally.expired += old;
    if (this.lots.unsound > 0) this.discover();
    this.setAlert();
    if (this.rule !== null) this.watch(this.rule);
  }

  /** Throws away what comes next and is not sound. */
  private discover(): void {
    const lost = this.lots.discover(this.unsoundLuck);
    if (lost === 0) return;
    this.change(-lost);
    this.tally.discovered += lost;
    this.setAlert();
  }

  /** A station without places in front does not notice what waits at its door. */
  private lookAtDoors(): void {
    for (const { station, wants } of this.takers) {
      if (station.keepsOut && wants[0]!.owed === 0 && !wants[0]!.idle) this.note(wants[0]!, 1);
    }
  }

  /** One of those that waited for a piece has it. */
  private served(want: Want): void {
    want.owed--;
    this.owed--;
    this.tally.late++;
    this.setAlert();
  }

  /** Those that take pieces, the longest waiting first. A station has one turn, however many wait in front of it. */
  private byTurn() {
    const turn = ({ wants }: { readonly wants: readonly Want[] }) =>
      wants.reduce((first, { owed, turn }) => (owed > 0 ? Math.min(first, turn) : first), this.turns + 1);
    return [...this.takers].sort((a, b) => turn(a) - turn(b));
  }

  private note(want: Want, waiting: number): void {
    if (want.owed === 0) want.turn = ++this.turns;
    this.owed += waiting - want.owed;
    want.owed = waiting;
    this.fallShort();
  }

  private fallShort(): void {
    if (this.short) return;
    this.short = true;
    this.tally.stockOuts++;
  }
}
