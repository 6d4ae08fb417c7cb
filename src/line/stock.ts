import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Sampler } from '../kernel/distributions/distribution.ts';
import { samplerOf } from '../kernel/distributions/index.ts';
import { standardNormal } from '../kernel/distributions/normal.ts';
import type { Streams } from '../kernel/streams.ts';
import type { StockSpec } from '../scenario/stocks.ts';
import type { Consumer } from './place.ts';
import { Variation } from './variation.ts';

/**
 * Bought-in material under an (s,Q) rule: when what is on hand and on order falls to the reorder point, one or
 * more orders are placed. Each delivery is one lot; lots are used in the order of delivery.
 */
export class Stock implements Actor {
  readonly name: string;
  readonly limited: boolean;
  /** Stations that may be waiting for a delivery. */
  readonly consumers: Consumer[] = [];
  onHand: number;
  onOrder = 0;
  taken = 0;
  delivered = 0;
  readonly initial: number;
  private readonly calendar: Calendar;
  private readonly me: number;
  private readonly spec: StockSpec;
  private readonly leadTime: Sampler | null;
  /** Lots on hand: their numbers and pieces left, oldest first. */
  private lots: { lot: number; left: number }[];
  private nextLot = 1;
  /** Place of the oldest lot: taking it off the front of a long list each time would be slow. */
  private oldest = 0;
  private readonly streams: Streams;
  private readonly variations = new Map<string, Variation>();
  /** Outages of the supplier under way, and what has to wait for their end. */
  private outages = 0;
  private delayed: number[] = [];
  private outSum = 0;
  private since = 0;

  constructor(spec: StockSpec, calendar: Calendar, streams: Streams) {
    this.name = spec.name;
    this.limited = spec.unlimited !== true;
    this.initial = this.limited ? spec.onHand! : Number.POSITIVE_INFINITY;
    this.onHand = this.initial;
    this.lots = this.initial > 0 ? [{ lot: 0, left: this.initial }] : [];
    this.spec = spec;
    this.streams = streams;
    this.calendar = calendar;
    this.me = calendar.enter(this);
    this.leadTime = spec.leadTime
      ? samplerOf(spec.leadTime, streams.of(`stock/${spec.name}/lead-time`))
      : null;
  }

  /** Places the orders that the rule asks for at the start. */
  open(): void {
    this.reorder();
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
    const { shrinkage } = this.spec;
    return shrinkage ? this.variation('sheet shrinkage', shrinkage.lotSd, 0) : null;
  }

  /** Takes one piece, which must be on hand, and returns the number of its lot. */
  take(): number {
    const first = this.lots[this.oldest]!;
    if (!this.limited) {
      this.taken++;
      return first.lot;
    }
    if (this.onHand === 1) this.settle();
    this.onHand--;
    this.taken++;
    if (--first.left === 0 && ++this.oldest > 1000) {
      this.lots.splice(0, this.oldest);
      this.oldest = 0;
    }
    this.reorder();
    return first.lot;
  }

  happen(_code: number, lot: number): void {
    if (this.outages > 0) this.delayed.push(lot);
    else this.deliver(lot);
  }

  /** The supplier delivers nothing until as many `supply` calls; what falls due comes then. */
  cutOff(): void {
    this.outages++;
  }

  supply(): void {
    if (--this.outages > 0) return;
    const due = this.delayed;
    this.delayed = [];
    for (const lot of due) this.deliver(lot);
  }

  /** Seconds with nothing on hand, up to now. */
  outSeconds(): number {
    this.settle();
    return this.outSum;
  }

  private reorder(): void {
    const { reorderAt, order } = this.spec;
    if (reorderAt === undefined || order === undefined || !this.leadTime) return;
    while (this.onHand + this.onOrder <= reorderAt) {
      this.onOrder += order;
      this.calendar.schedule(this.calendar.now + this.leadTime(), this.me, 0, this.nextLot++);
    }
  }

  private deliver(lot: number): void {
    const pieces = this.spec.order!;
    this.settle();
    this.onOrder -= pieces;
    this.onHand += pieces;
    this.delivered += pieces;
    this.lots.push({ lot, left: pieces });
    for (const station of this.consumers) station.wake();
  }

  private settle(): void {
    const now = this.calendar.now;
    if (this.onHand === 0) this.outSum += now - this.since;
    this.since = now;
  }
}
