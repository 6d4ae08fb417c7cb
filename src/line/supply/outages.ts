import type { Actor, Calendar } from '../../kernel/calendar.ts';
import type { Sampler } from '../../kernel/distributions/distribution.ts';
import { type Law, samplerOf } from '../../kernel/distributions/index.ts';
import type { Stream } from '../../kernel/streams.ts';
import type { Supplier } from './supplier.ts';

const BEGIN = 0;

/** The random outages of a supplier, one after the other for ever: they follow the clock, whatever is ordered. */
export class Outages implements Actor {
  readonly name: string;
  private readonly calendar: Calendar;
  private readonly me: number;
  private readonly between: Sampler;
  private readonly lasts: Sampler;
  private readonly supplier: Supplier;
  private readonly orders: { resume(supplier: Supplier): void };

  constructor(
    orders: { readonly name: string; resume(supplier: Supplier): void },
    supplier: Supplier,
    spec: { readonly every: Law; readonly for: Law },
    calendar: Calendar,
    of: (purpose: string) => Stream,
  ) {
    this.name = orders.name;
    this.orders = orders;
    this.supplier = supplier;
    this.calendar = calendar;
    this.me = calendar.enter(this);
    this.between = samplerOf(spec.every, of('outage/every'));
    this.lasts = samplerOf(spec.for, of('outage/for'));
    calendar.schedule(this.between(), this.me, BEGIN, 0);
  }

  happen(code: number): void {
    const { calendar } = this;
    if (code === BEGIN) {
      this.supplier.cutOff();
      calendar.schedule(calendar.now + this.lasts(), this.me, BEGIN + 1, 0);
    } else {
      this.orders.resume(this.supplier);
      calendar.schedule(calendar.now + this.between(), this.me, BEGIN, 0);
    }
  }
}
