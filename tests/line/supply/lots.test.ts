import { describe, expect, it } from 'vitest';
import { Lots } from '../../../src/line/supply/lots.ts';

const taken = (lots: Lots, pieces: number) => Array.from({ length: pieces }, () => lots.take());

describe('lots', () => {
  it('are used in the order of delivery', () => {
    const lots = new Lots();
    lots.add(0, 2);
    lots.add(2, 1);
    lots.add(1, 2);
    expect(taken(lots, 5)).toEqual([0, 0, 2, 1, 1]);
    expect(lots.pieces).toBe(0);
  });

  it('that expire are used the first to expire first, also where one is in use already', () => {
    const lots = new Lots();
    lots.add(1, 2, 0, 50);
    lots.add(2, 1, 0, 40);
    lots.add(3, 1, 0, 50);
    expect(taken(lots, 2)).toEqual([2, 1]);
    lots.add(4, 1, 0, 45);
    expect(taken(lots, 3)).toEqual([4, 1, 3]);
  });

  it('are thrown away when they expire, with what is unsound among them', () => {
    const lots = new Lots();
    lots.add(1, 3, 1, 10);
    lots.add(2, 4, 1, 20);
    expect(lots.expire(9.9)).toBe(0);
    expect(lots.expire(10)).toBe(3);
    expect([lots.pieces, lots.unsound]).toEqual([4, 1]);
  });

  it('show what is not sound when its turn comes, each piece once', () => {
    const lots = new Lots();
    lots.add(1, 3, 3);
    lots.add(2, 2, 1);
    let draws = 0;
    // Draws that always say sound where that is possible.
    const luck = () => {
      draws++;
      return 0.999;
    };
    expect(lots.discover(luck)).toBe(3);
    expect([lots.pieces, lots.unsound, draws]).toEqual([2, 1, 4]);
    expect(lots.discover(luck)).toBe(0);
    expect(draws).toBe(4);
    expect(lots.take()).toBe(2);
    expect(lots.discover(luck)).toBe(1);
    expect(lots.pieces).toBe(0);
  });

  it('forget lots that are used up, however many there were', () => {
    const lots = new Lots();
    for (let number = 0; number < 5000; number++) lots.add(number, 1);
    expect(taken(lots, 5000)).toEqual(Array.from({ length: 5000 }, (_, i) => i));
  });
});
