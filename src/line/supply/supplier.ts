import type { Sampler } from '../../kernel/distributions/distribution.ts';
import { samplerOf } from '../../kernel/distributions/index.ts';
import type { Stream } from '../../kernel/streams.ts';
import type { FullSupplierSpec } from '../../scenario/supply/suppliers-of.ts';
import { Order } from './order.ts';
import { Rare } from './rare.ts';

/** Who delivers a stock: how soon, how much of it, how sound; and whether at all just now. */
export class Supplier {
  readonly name: string;
  readonly price: number;
  readonly perOrder: number;
  readonly finds: number;
  /** Orders that fell due during an outage. */
  private held: Order[] = [];
  private outages = 0;
  private latest = 0;
  /** Time from order to delivery and of the inspection, s, and what comes of the order. */
  private readonly next = { lead: 0, inspection: 0, share: 1 };
  private readonly inSequence: boolean;
  private readonly lead: Sampler;
  private readonly inspection: Sampler | null;
  private readonly short: { readonly chance: number; readonly share: number; readonly luck: Stream } | null;
  private readonly unsound: Rare | null;
  /** Of the unsound pieces, those that the inspection finds; null where it finds none. */
  private readonly found: Rare | null;

  /** @param of streams by purpose, all its own */
  constructor(spec: FullSupplierSpec, inSequence: boolean, of: (purpose: string) => Stream) {
    this.name = spec.name;
    this.inSequence = inSequence;
    this.price = spec.price ?? 0;
    this.perOrder = spec.perOrder ?? 0;
    this.lead = samplerOf(spec.leadTime!, of('lead-time'));
    const { delivers, incoming } = spec;
    this.inspection = incoming?.takes ? samplerOf(incoming.takes, of('inspection')) : null;
    this.short = delivers?.short ? { ...delivers.short, luck: of('short') } : null;
    const bad = 1 - (delivers?.sound ?? 1);
    this.unsound = bad > 0 ? new Rare(bad, of('unsound')) : null;
    this.finds = incoming ? (incoming.finds ?? 1) : 0;
    this.found = bad > 0 && this.finds > 0 ? new Rare(this.finds, of('found')) : null;
  }

  /** Draws what the next order meets: for every order, also one that goes to another, so that order number k has its own luck. */
  draw(): void {
    const { short } = this;
    this.next.lead = this.lead();
    if (this.inspection) this.next.inspection = this.inspection();
    if (short) this.next.share = short.luck() < short.chance ? short.share : 1;
  }

  /** What becomes of an order of so many pieces that is placed now, by what was drawn for it. */
  promise(number: number, pieces: number, now: number): Order {
    const { lead, inspection, share } = this.next;
    const ready = now + lead;
    const due = this.inSequence ? Math.max(this.latest, ready) : ready;
    this.latest = due;
    const brought = share < 1 ? Math.round(share * pieces) : pieces;
    const unsound = this.unsound ? this.unsound.among(brought) : 0;
    const found = this.found && unsound > 0 ? this.found.among(unsound) : 0;
    return new Order(this, number, pieces, ready, due, { brought, unsound, found, inspection });
  }

  soonest(order: Order, ready: number, out: Iterable<Order>): number {
    let due = ready;
    if (!this.inSequence) return due;
    for (const before of out)
      if (before.supplier === this && before.number < order.number) due = Math.max(due, before.due);
    return due;
  }

  closeUp(out: Iterable<Order>, now: number): readonly Order[] {
    if (!this.inSequence) return [];
    const moved: Order[] = [];
    this.latest = now;
    for (const order of out) {
      if (order.supplier !== this || order.arrived) continue;
      this.latest = Math.max(this.latest, order.ready);
      if (this.latest >= order.due) continue;
      order.due = this.latest;
      moved.push(order);
    }
    return moved;
  }

  get isOut(): boolean {
    return this.outages > 0;
  }

  /** Delivers nothing until as many `supply` calls. */
  cutOff(): void {
    this.outages++;
  }

  /** Ends an outage, and returns the orders that it held up, if it was the last. */
  supply(): readonly Order[] {
    if (--this.outages > 0) return [];
    const due = this.held;
    this.held = [];
    return due;
  }

  hold(order: Order): void {
    this.held.push(order);
  }
}
