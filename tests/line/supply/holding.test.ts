import { expect, it } from 'vitest';
import { Holding } from '../../../src/line/supply/holding.ts';

it('knows for how long pieces were held, and takes over what another held', () => {
  const clock = { now: 0 };
  const [one, other] = [new Holding(clock), new Holding(clock)];
  clock.now = 10;
  one.add();
  other.add();
  clock.now = 15;
  one.add();
  other.remove();
  clock.now = 30;
  one.remove();
  clock.now = 40;
  // One piece 10-15, two 15-30, one 30-40; and one 10-15.
  expect([one.seconds(), other.seconds(), one.pieces]).toEqual([5 + 30 + 10, 5, 1]);
  one.absorb(other);
  expect(one.seconds()).toBe(50);
});
