import { expect, it } from 'vitest';
import { ShelfLife } from '../../../src/line/supply/shelf-life.ts';

it('is that of the lot, in whatever order lots come', () => {
  let drawn = 0;
  const life = new ShelfLife(() => ++drawn);
  expect([life.ofLot(2), life.ofLot(0), life.ofLot(2), life.ofLot(1)]).toEqual([3, 1, 3, 2]);
});
