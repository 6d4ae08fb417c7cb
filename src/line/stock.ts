import type { Actor, Calendar } from '../kernel/calendar.ts';
import { samplerOf } from '../kernel/distributions/index.ts';
import { standardNormal } from '../kernel/distributions/normal.ts';
import type { Stream, Streams } from '../kernel/streams.ts';
import type { Bounds } from '../scenario/conditions/bounds.ts';
import type { StockSpec } from '../scenario/stocks.ts';
import { Levels } from './levels.ts';
import { Lots } from './supply/lots.ts';
import type { Order } from './supply/order.ts';
import { Orders } from './supply/orders.ts';
import { Reserve } from './supply/reserve.ts';
import { type Rule, ruleOf } from './supply/rule.ts';
import { ShelfLife } from './supply/shelf-life.ts';
import { StockTally } from './supply/stock-tally.ts';
import { type Taker, Takers, type Want } from './supply/takers.ts';
import { Variation } from './variation.ts';

/** What the thickness of sheet is called among what varies of a stock. */
export const THICKNESS = 'sheet thickness';

const REVIEW = 0;
const EXPIRE = 1;

/** Bought-in material: what is on hand, by lots, and what it is replenished by. */
export class Stock implements Actor {
  readonly name: string;
  readonly limited: boolean;
  readonly initial: number;
  /** Books what was taken and not told yet: called before anything looks at the stock; null where there is no such. */
  onLook: (() => void) | null = null;
  /** Pieces taken that are not booked yet; null where all are at once. */
  unbooked: (() => number) | null = null;
  /** Null where it is never ordered. */
  readonly orders: Orders | null;
  readonly lots = new Lots();
  readonly reserve: Reserve;
  private readonly takers: Takers;
  private readonly calendar: Calendar;
  private readonly me: number;
  private readonly rule: Rule | null;
  private readonly shrinks: StockSpec['shrinkage'];
  private readonly streams: Streams;
  private readonly variations = new Map<string, Variation>();
  private readonly shelfLife: ShelfLife | null;
  private readonly unsoundLuck: Stream;
  private readonly counts = new StockTally();
  /** Pieces on hand; infinite where the stock is not limited. */
  private pieces: number;
  /** Whether a piece was asked for in vain since the last delivery. */
  private short = false;
  /** Since when none is on hand, if none is, s. */
  private since = 0;
  /** Sum over all changes of what is on hand of the change times the clock, piece-seconds: its integral follows from that. */
  private moments = 0;
  /** A piece taken brings nothing about while more than so many are on hand. */
  private alert = 0;
  private opened = false;
  /** What a policy goes by; null where none does. */
  private levels: Levels | null = null;

  constructor(spec: StockSpec, calendar: Calendar, streams: Streams) {
    this.name = spec.name;
    this.limited = spec.unlimited !== true;
    this.initial = this.limited ? spec.onHand! : Number.POSITIVE_INFINITY;
    this.pieces = this.initial;
    this.reserve = new Reserve(spec.reserve ?? 0, calendar);
    this.streams = streams;
    this.calendar = calendar;
    this.me = calendar.enter(this);
    this.takers = new Takers(calendar);
    this.rule = ruleOf(spec);
    this.shrinks = spec.shrinkage;
    this.orders = this.rule
      ? new Orders(spec, calendar, streams, this.counts, (order) => this.deliver(order))
      : null;
    const of = (purpose: string) => streams.of(`stock/${spec.name}/${purpose}`);
    this.shelfLife = spec.shelfLife ? new ShelfLife(samplerOf(spec.shelfLife, of('shelf-life'))) : null;
    this.unsoundLuck = of('discovery');
    if (this.limited) this.lots.add(0, this.initial, 0, this.expiry(0));
  }

  /** Looks at the stock for the first time, and places the orders that the rule asks for. */
  open(): void {
    this.opened = true;
    this.replenish();
    if (this.rule?.review != null) this.calendar.schedule(this.rule.review, this.me, REVIEW, 0);
  }

  /**
   * Enters a station, or one more machine of it, that takes pieces and is told when they come.
   * @param idle whether it takes none yet
   */
  want(station: Taker, idle = false): Want {
    return this.takers.enter(station, idle);
  }

  /** Enters a repair that takes pieces: from then on all that wait for the stock are served in turn. */
  wantInTurn(repair: Taker): Want {
    this.takers.serveInTurn();
    return this.want(repair);
  }

  /** Whether nothing else takes pieces. */
  isFor(want: Want): boolean {
    return this.takers.areOnly(want);
  }

  /** Pieces on hand; infinite where the stock is not limited. */
  get onHand(): number {
    this.onLook?.();
    return this.pieces;
  }

  /** The same for who only looks: nothing is booked for it. */
  get seen(): number {
    return this.pieces - (this.unbooked?.() ?? 0);
  }

  /** The running counts; integrals as last brought up to date by `counted`. */
  get tally(): StockTally {
    this.onLook?.();
    return this.counts;
  }

  /** Pieces that may be taken one after the other before one brings anything about. */
  get quiet(): number {
    if (!this.limited) return Number.MAX_SAFE_INTEGER;
    return this.takers.owed > 0 ? 0 : Math.max(0, this.onHand - this.alert - 1);
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

  /** Makes a feature of all pieces of a lot, or the thickness of sheet, so much larger. */
  shiftLot(feature: string, lot: number, by: number): void {
    const name = feature === 'thickness' ? THICKNESS : feature;
    this.variations.get(name)?.shiftLot(lot, by);
  }

  /** How much of the shrinkage of parts depends on the delivery of sheet; null where it does not. */
  get shrinkage(): Variation | null {
    const shrinkage = this.shrinks;
    return shrinkage ? this.variation('sheet shrinkage', shrinkage.lotSd, 0) : null;
  }

  /** Takes one piece, which must be on hand, and returns the number of its lot. */
  take(want: Want): number {
    this.counts.taken++;
    if (!this.limited) return 0;
    this.moments -= this.calendar.now;
    this.pieces--;
    const lot = this.lots.take();
    if (this.takers.owed > 0) this.passOn(want);
    if (this.pieces <= this.alert) this.attend();
    return lot;
  }

  /**
   * Books pieces that were taken before, and brought nothing about.
   * @param pieces at most `quiet`
   * @param moments sum of the times when each was taken, s
   */
  takeMany(pieces: number, moments: number): void {
    this.counts.taken += pieces;
    if (!this.limited) return;
    this.moments -= moments;
    this.pieces -= pieces;
    this.lots.takeMany(pieces);
  }

  /** None is on hand, and so many wait for one. */
  lack(want: Want, waiting: number): void {
    this.takers.note(want, waiting);
    this.fallShort();
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
    this.limit(want, 0);
  }

  /** Whatever was said before, no more than so many wait for a piece. */
  limit(want: Want, waiting: number): void {
    if (want.owed <= waiting) return;
    this.takers.limit(want, waiting);
    this.setAlert();
  }

  /** None is on hand, and what wanted one goes without. */
  refuse(): void {
    this.counts.refused++;
    this.fallShort();
  }

  /** Tells whether what is on hand is beyond its bounds: at once, and at each change from then on. */
  onLevel(bounds: Bounds, tell: (holds: boolean) => void): void {
    this.levels ??= new Levels(
      `level of ${this.name}`,
      this.calendar,
      () => this.onHand,
      () => this.setAlert(),
    );
    this.levels.add(bounds, tell);
  }

  /** Puts so many pieces of the reserve on hand, as far as there are; they are of the lot that was there at the start. */
  draw(pieces: number): void {
    const drawn = this.reserve.draw(pieces);
    if (drawn === 0) return;
    if (this.onHand === 0) this.lookAtDoors();
    this.counts.drawn += drawn;
    this.change(drawn);
    this.lots.add(0, drawn);
    this.setAlert();
    if (this.opened) this.takers.wake();
  }

  happen(code: number): void {
    if (code === EXPIRE) return this.expire();
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

  /** Tells the number of each order as it is placed. */
  onOrder(tell: (order: number) => void): void {
    this.orders?.listeners.push(tell);
  }

  /** Speeds up the order of this number, or else the oldest on its way, if that can be, and says whether it did. */
  expedite(order?: number): boolean {
    return this.orders?.expedite(order) ?? false;
  }

  /** The counts up to now. */
  counted(): StockTally {
    const { counts, onHand } = this;
    const { now } = this.calendar;
    if (onHand === 0) {
      this.lookAtDoors();
      counts.outSeconds += now - this.since;
      this.since = now;
    }
    counts.onHandSeconds = onHand * now - this.moments;
    counts.waitedSeconds = this.takers.settle();
    counts.owed = this.takers.owed;
    counts.reserveSeconds = this.reserve.settle();
    this.orders?.settle();
    return counts.copy();
  }

  /** What is on hand and on order, less what is owed where that counts. */
  private get position(): number {
    return this.onHand + this.orders!.onOrder - (this.rule!.backorders ? this.takers.owed : 0);
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
    if (this.pieces === 0) this.since = this.calendar.now;
    if (this.lots.unsound > 0) this.discover();
    if (this.rule !== null) this.watch(this.rule);
    if (this.levels !== null) this.levels.look(this.onHand);
  }

  private setAlert(): void {
    this.onLook?.();
    const { rule } = this;
    let alert = 0;
    if (this.lots.unsound > 0) alert = Number.POSITIVE_INFINITY;
    else if (rule !== null && rule.review === null)
      alert = Math.max(0, rule.orderAt - this.orders!.onOrder + (rule.backorders ? this.takers.owed : 0));
    if (this.levels !== null) alert = Math.max(alert, this.levels.least);
    this.alert = alert;
  }

  /** So many more pieces are on hand from now on, or fewer. */
  private change(pieces: number): void {
    const { now } = this.calendar;
    if (this.onHand === 0) this.counts.outSeconds += now - this.since;
    this.moments += pieces * now;
    this.pieces += pieces;
    this.takers.have(this.pieces);
    this.since = now;
    if (this.levels !== null) this.levels.look(this.onHand);
  }

  private deliver({ number, brought, unsound, found }: Order): void {
    const { counts } = this;
    const pieces = brought - found;
    if (this.onHand === 0) this.lookAtDoors();
    this.change(pieces);
    counts.delivered += pieces;
    counts.cycles++;
    if (this.short) counts.shortCycles++;
    if (pieces > 0) this.short = false;
    this.lots.add(number, pieces, unsound - found, this.expiry(number));
    if (this.lots.unsound > 0) this.discover();
    this.setAlert();
    this.takers.wake();
    if (this.onHand === 0 && this.takers.owed > 0) this.fallShort();
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
    this.onLook?.();
    const old = this.lots.expire(this.calendar.now);
    if (old === 0) return;
    this.change(-old);
    this.counts.expired += old;
    if (this.lots.unsound > 0) this.discover();
    this.setAlert();
    if (this.rule !== null) this.watch(this.rule);
  }

  /** Throws away what comes next and is not sound. */
  private discover(): void {
    const lost = this.lots.discover(this.unsoundLuck);
    if (lost === 0) return;
    this.change(-lost);
    this.counts.discovered += lost;
    this.setAlert();
  }

  private lookAtDoors(): void {
    if (this.takers.lookAtDoors()) this.fallShort();
  }

  /** A piece is taken while some wait, perhaps by one of these. */
  private passOn(want: Want): void {
    this.takers.have(this.pieces);
    if (want.owed === 0) return;
    this.takers.served(want);
    this.counts.late++;
    this.setAlert();
  }

  private fallShort(): void {
    if (this.short) return;
    this.short = true;
    this.counts.stockOuts++;
  }
}
