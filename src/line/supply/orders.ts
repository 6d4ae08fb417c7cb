import type { Actor, Calendar } from '../../kernel/calendar.ts';
import type { Sampler } from '../../kernel/distributions/distribution.ts';
import { samplerOf } from '../../kernel/distributions/index.ts';
import type { Streams } from '../../kernel/streams.ts';
import type { StockSpec } from '../../scenario/stocks.ts';
import { suppliersOf } from '../../scenario/supply/suppliers-of.ts';
import { type Choice, choiceOf } from './choice.ts';
import type { Order } from './order.ts';
import { Outages } from './outages.ts';
import type { StockTally } from './stock-tally.ts';
import { Supplier } from './supplier.ts';

const DUE = 0;
const INSPECTED = 1;

/** The orders of one stock that are out: placed with a supplier, due, perhaps held up, inspected, delivered. */
export class Orders implements Actor {
  readonly name: string;
  /** Pieces on order; those under inspection are. */
  onOrder = 0;
  /** By number, the oldest first. */
  readonly out = new Map<number, Order>();
  /** Told the number of each order as it is placed. */
  readonly listeners: ((order: number) => void)[] = [];
  /** What disturbs orders as they come, before they are inspected; null where nothing does. */
  spoilers: ((order: Order) => void)[] | null = null;
  private readonly calendar: Calendar;
  private readonly me: number;
  private readonly tally: StockTally;
  private readonly deliver: (order: Order) => void;
  private readonly suppliers: readonly Supplier[];
  private readonly choice: Choice;
  private readonly expediting: { readonly lead: Sampler; readonly price: number } | null;
  private placed = 0;
  private since = 0;

  /** @param deliver takes what an order brings; the order is out no more */
  constructor(
    spec: StockSpec,
    calendar: Calendar,
    streams: Streams,
    tally: StockTally,
    deliver: (order: Order) => void,
  ) {
    const of = (purpose: string) => streams.of(`stock/${spec.name}/${purpose}`);
    this.name = spec.name;
    this.calendar = calendar;
    this.me = calendar.enter(this);
    this.tally = tally;
    this.deliver = deliver;
    const specs = suppliersOf(spec);
    this.suppliers = specs.map((one) => {
      const own = one.name === '' ? of : (purpose: string) => of(`${one.name}/${purpose}`);
      const supplier = new Supplier(one, spec.inSequence ?? false, own);
      if (one.outages) new Outages(this, supplier, one.outages, calendar, own);
      return supplier;
    });
    this.choice = choiceOf(specs, this.suppliers, () => of('supplier'));
    this.expediting = spec.expedite
      ? { lead: samplerOf(spec.expedite.leadTime, of('expedite')), price: spec.expedite.price ?? 0 }
      : null;
  }

  place(pieces: number): void {
    const { calendar, tally } = this;
    for (const supplier of this.suppliers) supplier.draw();
    const supplier = this.suppliers[this.choice()]!;
    const order = supplier.promise(++this.placed, pieces, calendar.now);
    this.settle();
    this.onOrder += pieces;
    this.out.set(order.number, order);
    tally.orders++;
    tally.ordered += pieces;
    tally.ordering += supplier.perOrder;
    calendar.schedule(order.due, this.me, DUE, order.number);
    for (const listener of this.listeners) listener(order.number);
  }

  happen(code: number, number: number): void {
    const order = this.out.get(number);
    if (order === undefined) return;
    if (code === INSPECTED) return this.close(order);
    // An order that comes sooner than it was to falls due twice.
    if (order.arrived) return;
    order.arrived = true;
    if (order.supplier.isOut) order.supplier.hold(order);
    else this.receive(order);
  }

  /** One supplier, or all of them, deliver nothing until as many `supply` calls; what falls due comes then. */
  cutOff(supplier?: string): void {
    for (const one of this.named(supplier)) one.cutOff();
  }

  supply(supplier?: string): void {
    for (const one of this.named(supplier)) this.resume(one);
  }

  /** Ends an outage of one supplier. */
  resume(supplier: Supplier): void {
    for (const order of supplier.supply()) this.receive(order);
  }

  /**
   * Speeds up the order of this number, or else the oldest that is still on its way at its own pace, and says whether it
   * did: not where there is none, where the stock knows no such thing, or where the order comes sooner as it is.
   */
  expedite(number?: number): boolean {
    const { expediting, out, calendar } = this;
    if (!expediting) return false;
    const order = number === undefined ? this.oldestUnsped() : out.get(number);
    if (order === undefined || order.arrived || order.spedUp) return false;
    const ready = calendar.now + expediting.lead();
    const due = order.supplier.soonest(order, ready, out.values());
    if (due >= order.due) return false;
    order.ready = ready;
    order.due = due;
    order.spedUp = true;
    order.dearer = expediting.price;
    calendar.schedule(due, this.me, DUE, order.number);
    for (const next of order.supplier.closeUp(out.values(), calendar.now))
      calendar.schedule(next.due, this.me, DUE, next.number);
    return true;
  }

  /** Brings the integral of what is on order up to now. */
  settle(): void {
    const { now } = this.calendar;
    this.tally.onOrderSeconds += this.onOrder * (now - this.since);
    this.since = now;
  }

  private oldestUnsped(): Order | undefined {
    for (const order of this.out.values()) if (!order.arrived && !order.spedUp) return order;
    return undefined;
  }

  private named(name: string | undefined): readonly Supplier[] {
    return name === undefined ? this.suppliers : this.suppliers.filter((one) => one.name === name);
  }

  private receive(order: Order): void {
    if (this.spoilers !== null) for (const spoil of this.spoilers) spoil(order);
    if (order.inspection === 0) return this.close(order);
    this.calendar.schedule(this.calendar.now + order.inspection, this.me, INSPECTED, order.number);
  }

  private close(order: Order): void {
    const { tally } = this;
    this.settle();
    this.onOrder -= order.pieces;
    this.out.delete(order.number);
    tally.missing += order.pieces - order.brought;
    tally.found += order.found;
    tally.purchase += order.brought * order.supplier.price;
    tally.expedite += order.brought * order.dearer;
    this.deliver(order);
  }
}
