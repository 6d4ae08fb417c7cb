import { describe, expect, it } from 'vitest';
import { Takers } from '../../../src/line/supply/takers.ts';

const taker = (told: string[], name: string, keepsOut = false) => ({
  keepsOut,
  wake: () => void told.push(name),
});

describe('those that take pieces', () => {
  it('have waited for so many piece-seconds', () => {
    const clock = { now: 0 };
    const takers = new Takers(clock);
    const want = takers.enter(taker([], 'a'), false);
    clock.now = 10;
    takers.note(want, 2);
    clock.now = 15;
    takers.served(want);
    clock.now = 18;
    // Two for 5 s, one for 3 s.
    expect(takers.settle()).toBe(13);
    takers.limit(want, 0);
    clock.now = 30;
    expect(takers.settle()).toBe(13);
    expect(takers.owed).toBe(0);
  });

  it('do not wait for pieces that are on hand', () => {
    const clock = { now: 0 };
    const takers = new Takers(clock);
    const want = takers.enter(taker([], 'a'), false);
    takers.note(want, 5);
    clock.now = 10;
    takers.have(3);
    clock.now = 20;
    takers.have(4);
    clock.now = 30;
    takers.have(9);
    clock.now = 40;
    // Five for 10 s, then two, then one, then none.
    expect(takers.settle()).toBe(50 + 20 + 10);
  });

  it('are told in the order they were entered, or, where they are served in turn, the longest waiting first', () => {
    const told: string[] = [];
    const takers = new Takers({ now: 0 });
    const [a, b] = ['a', 'b', 'c'].map((name) => takers.enter(taker(told, name), false)) as never[];
    takers.note(b!, 1);
    takers.note(a!, 1);
    takers.wake();
    expect(told.join('')).toBe('abc');
    takers.serveInTurn();
    takers.wake();
    expect(told.join('')).toBe('abcbac');
  });

  it('know who is alone', () => {
    const takers = new Takers({ now: 0 });
    const one = taker([], 'a');
    const want = takers.enter(one, false);
    expect(takers.areOnly(want)).toBe(true);
    // Another machine of the same station.
    takers.enter(one, true);
    expect(takers.areOnly(want)).toBe(false);
  });

  it('notice one that waits at a door, once', () => {
    const takers = new Takers({ now: 0 });
    takers.enter(taker([], 'a', true), false);
    takers.enter(taker([], 'b', true), true);
    expect(takers.lookAtDoors()).toBe(true);
    expect(takers.owed).toBe(1);
    expect(takers.lookAtDoors()).toBe(false);
  });
});
