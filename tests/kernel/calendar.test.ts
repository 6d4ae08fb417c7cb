import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Actor, Calendar, EndlessLoopError } from '../../src/kernel/calendar.ts';

/** Writes down what happens to it. */
class Diary implements Actor {
  readonly name = 'diary';
  readonly entries: { time: number; code: number; stamp: number }[] = [];
  readonly #calendar: Calendar;
  constructor(calendar: Calendar) {
    this.#calendar = calendar;
  }
  happen(code: number, stamp: number): void {
    this.entries.push({ time: this.#calendar.now, code, stamp });
  }
}

function withDiary() {
  const calendar = new Calendar();
  const diary = new Diary(calendar);
  return { calendar, diary, me: calendar.enter(diary) };
}

describe('the calendar', () => {
  it('lets events happen in the order of time, and at one time in the order of scheduling', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 20 }), { maxLength: 300 }), (times) => {
        const { calendar, diary, me } = withDiary();
        times.forEach((time, i) => {
          calendar.schedule(time, me, i % 8, i);
        });
        calendar.run(20);
        const expected = times
          .map((time, i) => ({ time, code: i % 8, stamp: i }))
          .sort((a, b) => a.time - b.time || a.stamp - b.stamp);
        expect(diary.entries).toEqual(expected);
      }),
    );
  });

  it('keeps that order when events schedule others while it runs', () => {
    const calendar = new Calendar();
    const order: string[] = [];
    const child = calendar.enter({ name: 'x', happen: (_code, stamp) => order.push(`child ${stamp}`) });
    const parent = calendar.enter({
      name: 'x',
      happen: (_code, stamp) => {
        order.push(`parent ${stamp}`);
        calendar.schedule(calendar.now, child, 0, stamp);
        calendar.schedule(calendar.now + 1, child, 0, 10 + stamp);
      },
    });
    calendar.schedule(1, parent, 0, 1);
    calendar.schedule(1, parent, 0, 2);
    calendar.schedule(2, parent, 0, 3);
    calendar.run(2);
    // At 2 s: the parent was put down before its children of 1 s, so it comes first.
    expect(order).toEqual([
      ...['parent 1', 'parent 2', 'child 1', 'child 2'],
      ...['parent 3', 'child 11', 'child 12', 'child 3'],
    ]);
  });

  it('hands every actor its own code and stamp', () => {
    const calendar = new Calendar();
    const seen: number[][] = [];
    for (let who = 0; who < 100; who++) {
      const me = calendar.enter({ name: 'x', happen: (code, stamp) => seen.push([who, code, stamp]) });
      calendar.schedule(who, me, who % 8, 1000 + who);
    }
    calendar.run(100);
    expect(seen).toEqual(Array.from({ length: 100 }, (_, who) => [who, who % 8, 1000 + who]));
  });

  it('lets an event at exactly the end happen, and none after it', () => {
    const { calendar, diary, me } = withDiary();
    for (const time of [5, 10, 10.000001]) calendar.schedule(time, me, 0, 0);
    expect(calendar.run(10)).toBe(true);
    expect(diary.entries.map(({ time }) => time)).toEqual([5, 10]);
    expect(calendar.now).toBe(10);
    expect(calendar.pending).toBe(1);
  });

  it('goes on where it ended, counts what happened and says when it ran dry', () => {
    const { calendar, diary, me } = withDiary();
    for (const time of [1, 2, 3]) calendar.schedule(time, me, 0, 0);
    expect(calendar.run(2)).toBe(true);
    expect(calendar.run(7)).toBe(false);
    expect(diary.entries.map(({ time }) => time)).toEqual([1, 2, 3]);
    expect(calendar.events).toBe(3);
    expect(calendar.now).toBe(7);
  });

  it('refuses an event in the past or at no time', () => {
    const { calendar, me } = withDiary();
    calendar.run(10);
    expect(() => calendar.schedule(9.999, me, 0, 0)).toThrow(RangeError);
    expect(() => calendar.schedule(Number.NaN, me, 0, 0)).toThrow(RangeError);
    expect(() => calendar.schedule(10, me, 0, 0)).not.toThrow();
  });

  it('explains an endless loop at one instant, with its time and its actor', () => {
    const calendar = new Calendar();
    const again: Actor = { name: 'x', happen: () => calendar.schedule(calendar.now, me, 0, 0) };
    const me = calendar.enter(again);
    calendar.schedule(3, me, 0, 0);
    let caught: unknown;
    try {
      calendar.run(10);
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(EndlessLoopError);
    expect(caught).toMatchObject({ time: 3, actor: again });
  });

  it('takes a great many events for no loop while the clock moves', () => {
    const calendar = new Calendar();
    let left = 1_200_000;
    const me = calendar.enter({
      name: 'x',
      happen: () => {
        if (--left > 0) calendar.schedule(calendar.now + 1e-3, me, 0, 0);
      },
    });
    calendar.schedule(0, me, 0, 0);
    calendar.run(1e6);
    expect(calendar.events).toBe(1_200_000);
  });
});
