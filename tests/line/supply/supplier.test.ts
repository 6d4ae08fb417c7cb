import { describe, expect, it } from 'vitest';
import { Streams } from '../../../src/kernel/streams.ts';
import { Supplier } from '../../../src/line/supply/supplier.ts';
import type { FullSupplierSpec } from '../../../src/scenario/supply/suppliers-of.ts';

const leadTime = { distribution: 'exponential', mean: 100 } as const;
const streams = new Streams(3);
const supplier = (keys: Partial<FullSupplierSpec> = {}, inSequence = false) =>
  new Supplier({ name: '', leadTime, ...keys }, inSequence, (purpose) => streams.of(purpose));
const orders = (at: Supplier, number: number, pieces = 100) =>
  Array.from({ length: number }, (_, i) => {
    at.draw();
    return at.promise(i + 1, pieces, i);
  });

/** Within 3.5 standard errors of a share of `n` trials. */
function expectShare(count: number, n: number, share: number): void {
  expect(Math.abs(count / n - share)).toBeLessThan(3.5 * Math.sqrt((share * (1 - share)) / n));
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

describe('a supplier', () => {
  it('lets orders overtake each other, unless they come in sequence', () => {
    const dues = (at: Supplier) => orders(at, 200).map(({ due }) => due);
    const [free, bound] = [dues(supplier()), dues(supplier({}, true))];
    expect(free.some((due, i) => i > 0 && due < free[i - 1]!)).toBe(true);
    // The latest of an order's own time and those before it.
    expect(bound).toEqual(free.map((_, i) => Math.max(...free.slice(0, i + 1))));
  });

  it('brings what is sound, found and short in the shares that it is said to', () => {
    const at = supplier({
      delivers: { sound: 0.9, short: { chance: 0.3, share: 0.8 } },
      incoming: { takes: { distribution: 'constant', value: 60 }, finds: 0.25 },
    });
    const all = orders(at, 2000);
    const short = all.filter(({ brought }) => brought < 100);
    expect(new Set(short.map(({ brought }) => brought))).toEqual(new Set([80]));
    expectShare(short.length, all.length, 0.3);
    const brought = sum(all.map((order) => order.brought));
    const unsound = sum(all.map((order) => order.unsound));
    expectShare(unsound, brought, 0.1);
    expectShare(sum(all.map(({ found }) => found)), unsound, 0.25);
    expect(all[0]!.inspection).toBe(60);
  });

  it('has every unsound piece found by an inspection that does not say otherwise, and none without one', () => {
    const delivers = { sound: 0.5 };
    for (const { unsound, found } of orders(supplier({ delivers, incoming: {} }), 20))
      expect(found).toBe(unsound);
    for (const { unsound, found } of orders(supplier({ delivers }), 20))
      expect([unsound > 0, found]).toEqual([true, 0]);
  });

  it('keeps what falls due while it is out until the last outage ends', () => {
    const at = supplier();
    const [order] = orders(at, 1);
    at.cutOff();
    at.cutOff();
    at.hold(order!);
    expect([at.supply(), at.isOut]).toEqual([[], true]);
    expect([at.supply(), at.isOut]).toEqual([[order], false]);
  });

  it('has the lead times of its orders from a stream of its own, whatever else is drawn', () => {
    const leads = (at: Supplier) => orders(at, 50).map(({ due }, i) => due - i);
    expect(leads(supplier({ delivers: { sound: 0.9, short: { chance: 0.5, share: 0 } } }))).toEqual(
      leads(supplier()),
    );
  });
});
