import { describe, expect, it } from 'vitest';
import { Calendar } from '../../../src/kernel/calendar.ts';
import { Streams } from '../../../src/kernel/streams.ts';
import type { Order } from '../../../src/line/supply/order.ts';
import { Orders } from '../../../src/line/supply/orders.ts';
import { StockTally } from '../../../src/line/supply/stock-tally.ts';
import type { StockSpec } from '../../../src/scenario/stocks.ts';

const constant = (value: number) => ({ distribution: 'constant', value }) as const;

function ordering(keys: Partial<StockSpec>) {
  const calendar = new Calendar();
  const tally = new StockTally();
  const came: (readonly [at: number, order: Order])[] = [];
  const spec = { name: 'frame', onHand: 1, upTo: 9, leadTime: constant(10), ...keys };
  const orders = new Orders(spec, calendar, new Streams(1), tally, (order) =>
    came.push([calendar.now, order]),
  );
  return { calendar, tally, orders, came, times: () => came.map(([at, { number }]) => [number, at]) };
}

describe('the orders that are out', () => {
  it('come after the lead time, and are on order until then', () => {
    const { calendar, orders, tally, times } = ordering({ price: 2, perOrder: 5 });
    orders.place(3);
    calendar.run(4);
    orders.place(2);
    expect([orders.onOrder, orders.out.size]).toEqual([5, 2]);
    calendar.run(20);
    expect(times()).toEqual([
      [1, 10],
      [2, 14],
    ]);
    orders.settle();
    expect(tally).toMatchObject({ orders: 2, ordered: 5, ordering: 10, purchase: 10 });
    expect(tally.onOrderSeconds).toBe(3 * 10 + 2 * 10);
    expect(orders.onOrder).toBe(0);
  });

  it('wait for the end of an outage of their own supplier, those of another do not', () => {
    const suppliers = [
      { name: 'near', rank: 1 },
      { name: 'far', rank: 2, leadTime: constant(15) },
    ];
    const { calendar, orders, times } = ordering({ suppliers });
    orders.place(1);
    orders.cutOff('near');
    orders.place(1);
    calendar.run(30);
    expect(times()).toEqual([[2, 15]]);
    orders.supply('near');
    expect(times()).toEqual([
      [2, 15],
      [1, 30],
    ]);
  });

  it('are sped up the oldest first, and only where that is sooner', () => {
    const { calendar, orders, times } = ordering({ expedite: { leadTime: constant(4), price: 1 } });
    orders.place(1);
    calendar.run(2);
    orders.place(1);
    expect([orders.expedite(), orders.expedite(), orders.expedite()]).toEqual([true, true, false]);
    calendar.run(30);
    expect(times()).toEqual([
      [1, 6],
      [2, 6],
    ]);
    orders.place(1);
    calendar.run(37);
    expect(orders.expedite()).toBe(false);
  });

  it('are sped up by number, too, whatever becomes of those before', () => {
    const { calendar, orders, times } = ordering({ expedite: { leadTime: constant(4), price: 1 } });
    orders.place(1);
    calendar.run(7);
    orders.place(1);
    // The first comes within 3 s as it is.
    expect([orders.expedite(), orders.expedite(2), orders.expedite(2)]).toEqual([false, true, false]);
    calendar.run(30);
    expect(times()).toEqual([
      [1, 10],
      [2, 11],
    ]);
  });

  it('keep their sequence when one is sped up, and do not wait for what has come', () => {
    const leadTime = { distribution: 'empirical', values: [100, 5] } as const;
    const expedite = { leadTime: constant(4), price: 1 };
    const { calendar, orders } = ordering({ leadTime, inSequence: true, expedite });
    const all = () => [...orders.out.values()];
    for (let k = 0; k < 8; k++) orders.place(1);
    const own = all().map(({ ready }) => ready);
    expect(new Set(own)).toEqual(new Set([5, 100]));
    // An order comes with the latest of those up to it.
    const expectDues = (ready: readonly number[]) =>
      expect(all().map(({ due }) => due)).toEqual(ready.map((_, i) => Math.max(...ready.slice(0, i + 1))));
    expectDues(own);
    // The last cannot come before those in front of it.
    expect(orders.expedite(8)).toBe(false);
    for (let sped = 1; sped <= 8; sped++) {
      expect(orders.expedite()).toBe(true);
      expectDues(own.map((ready, i) => (i < sped ? 4 : ready)));
    }
    calendar.run(10);
    expect(orders.out.size).toBe(0);
    for (let k = 0; k < 8; k++) orders.place(1);
    // Those that will have taken 5 s do not wait for what was to take 100 s and came long ago.
    const after = all().map(({ ready }) => ready);
    expectDues(after);
    expect(new Set(after)).toEqual(new Set([15, 110]));
  });
});
