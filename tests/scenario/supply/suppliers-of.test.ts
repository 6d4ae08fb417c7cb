import { expect, it } from 'vitest';
import { isOrdered, suppliersOf } from '../../../src/scenario/supply/suppliers-of.ts';

const hour = { distribution: 'constant', value: 3600 } as const;
const day = { distribution: 'constant', value: 86_400 } as const;

it('a stock with one supplier has what it says itself', () => {
  expect(suppliersOf({ name: 'frame', onHand: 1, upTo: 1, leadTime: hour, price: 3 })).toMatchObject([
    { name: '', leadTime: hour, price: 3 },
  ]);
});

it('each of several has its own, and else what the stock says', () => {
  const suppliers = [
    { name: 'near', rank: 1, price: 4, leadTime: undefined },
    { name: 'far', rank: 2, leadTime: day },
  ];
  expect(
    suppliersOf({ name: 'frame', onHand: 1, upTo: 1, leadTime: hour, price: 3, suppliers }),
  ).toMatchObject([
    { name: 'near', rank: 1, leadTime: hour, price: 4 },
    { name: 'far', rank: 2, leadTime: day, price: 3 },
  ]);
});

it('a stock is ordered when it has an order quantity or a level', () => {
  expect(isOrdered({ order: 3 })).toBe(true);
  expect(isOrdered({ upTo: 3 })).toBe(true);
  expect(isOrdered({})).toBe(false);
});
