import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { Level } from '../../src/line/level.ts';
import { small } from './small-line.ts';

describe('a level', () => {
  it('is crossed below its lower bound, and then at its upper', () => {
    const told: boolean[] = [];
    const level = new Level({ below: 3, until: 5 }, 4, (low) => told.push(low));
    expect([4, 3, 2].map((pieces) => level.isCrossed(pieces))).toEqual([false, false, true]);
    level.cross();
    expect([2, 4, 5].map((pieces) => level.isCrossed(pieces))).toEqual([false, false, true]);
    level.cross();
    expect(told).toEqual([true, false]);
  });

  it('is crossed above its upper bound, and then at its lower', () => {
    const told: boolean[] = [];
    const level = new Level({ above: 5, until: 3 }, 5, (much) => told.push(much));
    expect([4, 5, 6].map((pieces) => level.isCrossed(pieces))).toEqual([false, false, true]);
    level.cross();
    expect([6, 4, 3].map((pieces) => level.isCrossed(pieces))).toEqual([false, false, true]);
    level.cross();
    expect(told).toEqual([true, false]);
  });

  it('of a stock is told at once and at each change, whatever takes pieces away', () => {
    // 8, one taken at 0, 10 and 20 s; the 5 left are too old at 25 s; 6 ordered then come at 30 s.
    const line = prepare(
      small(
        '60 s',
        `
stock:
  blank: { on-hand: 8, reorder-at: 0, order: 6, lead-time: 5 s, shelf-life: 25 s }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }`,
      ),
      'carry on',
      1,
    );
    const told: [number, boolean][] = [];
    line.stocks.get('blank')!.onLevel({ below: 6, until: 6 }, (low) => told.push([line.calendar.now, low]));
    line.calendar.run(45);
    // Taken again at 30 s, at the very instant at which they come, so that it never seems to have enough.
    expect(told).toEqual([
      [0, false],
      [20, true],
    ]);
    const often: [number, boolean][] = [];
    line.stocks.get('blank')!.onLevel({ below: 4, until: 6 }, (low) => often.push([line.calendar.now, low]));
    line.calendar.run(61);
    // 4 at 40 s, 3 at 50 s, too old at 55 s with 3 left; 6 come at 60 s, and one is taken then.
    expect(often).toEqual([
      [45, false],
      [50, true],
    ]);
  });
});
