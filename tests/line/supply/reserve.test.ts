import { expect, it } from 'vitest';
import { Reserve } from '../../../src/line/supply/reserve.ts';

it('gives what there is, and knows how long its pieces were kept', () => {
  const clock = { now: 0 };
  const reserve = new Reserve(5, clock);
  clock.now = 10;
  expect([reserve.draw(3), reserve.left]).toEqual([3, 2]);
  clock.now = 20;
  expect([reserve.draw(3), reserve.left, reserve.atStart]).toEqual([2, 0, 5]);
  clock.now = 30;
  expect(reserve.settle()).toBe(5 * 10 + 2 * 10);
});
