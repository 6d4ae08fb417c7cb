import { expect, it } from 'vitest';
import { Aside } from '../../src/line/aside.ts';
import { Hand } from '../../src/line/hand.ts';
import { Mates } from '../../src/line/mates.ts';
import { Tally } from '../../src/line/tally.ts';

it('parts that are put aside are taken up in the order in which they came, with what was joined to them', () => {
  const tally = new Tally();
  let told = 0;
  const aside = new Aside(tally, () => told++);
  const hands = [new Hand(new Mates([])), new Hand(new Mates([]))] as const;
  aside.expect(7, hands[0]);
  aside.expect(3, hands[1]);
  expect([aside.count, aside.all]).toEqual([0, 2]);
  aside.accept(3);
  aside.accept(7);
  expect([aside.count, aside.all, told, tally.setAside]).toEqual([2, 2, 2, 2]);
  expect(aside.take()).toEqual({ row: 3, hand: hands[1] });
  expect(aside.take()).toEqual({ row: 7, hand: hands[0] });
  expect(aside.doors()).toBeNull();
});
