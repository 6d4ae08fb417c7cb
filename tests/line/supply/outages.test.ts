import { expect, it } from 'vitest';
import { Calendar } from '../../../src/kernel/calendar.ts';
import { Streams } from '../../../src/kernel/streams.ts';
import { Outages } from '../../../src/line/supply/outages.ts';
import { Supplier } from '../../../src/line/supply/supplier.ts';

const constant = (value: number) => ({ distribution: 'constant', value }) as const;

it('cuts the supplier off and lets it go on, one outage after the other, counted from the end of the last', () => {
  const calendar = new Calendar();
  const of = (purpose: string) => new Streams(1).of(purpose);
  const supplier = new Supplier({ name: '', leadTime: constant(1) }, false, of);
  const orders = { name: 'frame', resume: (one: Supplier) => one.supply() };
  new Outages(orders, supplier, { every: constant(10), for: constant(4) }, calendar, of);
  const out: number[] = [];
  for (let at = 1; at <= 30; at++) {
    calendar.run(at);
    if (supplier.isOut) out.push(at);
  }
  expect(out).toEqual([10, 11, 12, 13, 24, 25, 26, 27]);
});
