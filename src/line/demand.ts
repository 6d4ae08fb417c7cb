import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Sampler } from '../kernel/distributions/distribution.ts';
import type { Bounds } from '../scenario/conditions/bounds.ts';
import type { DemandAmount } from '../scenario/conditions/demand.ts';
import type { DemandSpec } from '../scenario/demand.ts';
import { Levels } from './levels.ts';
import type { Place, Unloader } from './place.ts';
import type { Tally } from './tally.ts';
import { Upsets } from './upset.ts';

const ORDER = 0;
const DUE = 1;

/**
 * Orders for good assemblies and the finished goods they are served from, whole orders first come first served.
 * A part enters finished goods by leaving the line as good; while they are full, the line is blocked.
 */
export class Demand implements Actor, Place {
  readonly name = 'demand';
  /** Finished goods on hand. */
  stock: number;
  readonly atStart: number;
  /** Good assemblies handed over to orders. */
  handedOver = 0;
  /** What disturbs how often orders come. */
  readonly upsets: Upsets;
  readonly #calendar: Calendar;
  readonly #me: number;
  readonly #spec: DemandSpec;
  readonly #between: Sampler;
  readonly #good: Place;
  readonly #tally: Tally;
  /** Numbers of the orders not served yet, oldest first, with the time at which each was found to be due. */
  readonly #open = new Map<number, number>();
  readonly #waiting: Unloader[] = [];
  #orders = 0;
  /** How many times as often as by the law they come, when the next does, s, and which of its plans holds. */
  #pace = 1;
  #nextAt = Number.NaN;
  #plan = 0;
  #since = 0;
  /** Orders due that are not served yet. */
  #late = 0;
  /** What a policy goes by; null where none does. */
  #levels: Map<DemandAmount, Levels> | null = null;

  constructor(spec: DemandSpec, between: Sampler, calendar: Calendar, good: Place, tally: Tally) {
    this.#spec = spec;
    this.#between = between;
    this.#calendar = calendar;
    this.upsets = new Upsets(calendar);
    this.#me = calendar.enter(this);
    this.#good = good;
    this.#tally = tally;
    this.atStart = spec.finishedGoods.atStart;
    this.stock = this.atStart;
  }

  /** The first order is on its way. */
  open(): void {
    this.#nextAt = this.#calendar.now + this.#between() / this.#pace;
    this.#calendar.schedule(this.#nextAt, this.#me, ORDER, this.#plan);
  }

  /** Orders come so many times as often as by the law from now on, the next one included. */
  quicken(pace: number): void {
    const before = this.#pace;
    this.#pace = pace;
    if (Number.isNaN(this.#nextAt) || pace === before) return;
    const { now } = this.#calendar;
    this.#nextAt = now + ((this.#nextAt - now) * before) / pace;
    this.#calendar.schedule(this.#nextAt, this.#me, ORDER, ++this.#plan);
  }

  accept(row: number): boolean {
    if (this.stock >= this.#spec.finishedGoods.most) return false;
    this.settle();
    this.#good.accept(row);
    this.stock++;
    this.#serve();
    if (this.#levels !== null) this.#look(this.#levels);
    return true;
  }

  wait(machine: Unloader): void {
    if (!this.#waiting.includes(machine)) this.#waiting.push(machine);
  }

  /** Tells whether an amount is beyond its bounds: at once, and at each change from then on. */
  onLevel(of: DemandAmount, bounds: Bounds, tell: (holds: boolean) => void): void {
    this.#levels ??= new Map();
    const known = this.#levels.get(of);
    const levels = known ?? new Levels(of, this.#calendar, () => this.#amount(of));
    if (known === undefined) this.#levels.set(of, levels);
    levels.add(bounds, tell);
  }

  /** The next order makes room. */
  doors(): null {
    return null;
  }

  happen(code: number, order: number): void {
    if (code === DUE) {
      this.#tally.ordersDue++;
      if (!this.#open.has(order)) this.#tally.ordersOnTime++;
      else {
        this.#open.set(order, this.#calendar.now);
        this.#late++;
        if (this.#levels !== null) this.#look(this.#levels);
      }
      return;
    }
    if (order !== this.#plan) return;
    this.#open.set(++this.#orders, Number.NaN);
    this.#calendar.schedule(this.#calendar.now + this.#spec.dueAfter, this.#me, DUE, this.#orders);
    this.open();
    this.#serve();
    this.#tally.ordersCame++;
    if (!this.#open.has(this.#orders)) this.#tally.ordersAtOnce++;
    if (this.#levels !== null) this.#look(this.#levels);
    const { most } = this.#spec.finishedGoods;
    while (this.#waiting.length > 0 && this.stock < most) this.#waiting.shift()!.unload();
  }

  /** Brings the integral of finished goods up to now. */
  settle(): void {
    const { now } = this.#calendar;
    this.#tally.finishedGoodsSeconds += this.stock * (now - this.#since);
    this.#since = now;
  }

  #amount(of: DemandAmount): number {
    if (of === 'finished-goods') return this.stock;
    return of === 'open-orders' ? this.#open.size : this.#late;
  }

  #look(levels: ReadonlyMap<DemandAmount, Levels>): void {
    for (const [of, its] of levels) its.look(this.#amount(of));
  }

  #serve(): void {
    for (const [order, foundDue] of this.#open) {
      if (this.stock < this.#spec.pieces) return;
      this.settle();
      this.stock -= this.#spec.pieces;
      this.handedOver += this.#spec.pieces;
      this.#open.delete(order);
      if (!Number.isNaN(foundDue)) this.#late--;
      // Served at the very instant it is due, only later in the order of events.
      if (foundDue === this.#calendar.now) this.#tally.ordersOnTime++;
    }
  }
}
