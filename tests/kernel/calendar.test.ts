import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Actor, Calendar, EndlessLoopError } from '../../src/kernel/calendar.ts';
import { Streams } from '../../src/kernel/streams.ts';

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

/** What a calendar is to its users, done in the plainest way: a list, searched for what comes first. */
class PlainCalendar {
  now = 0;
  events = 0;
  #order = 0;
  readonly #actors: Actor[] = [];
  #list: { time: number; order: number; who: number; code: number; stamp: number }[] = [];

  get pending(): number {
    return this.#list.length;
  }

  enter(actor: Actor): number {
    return this.#actors.push(actor) - 1;
  }

  schedule(time: number, who: number, code: number, stamp: number): void {
    this.#list.push({ time, order: this.#order++, who, code, stamp });
  }

  run(end: number): boolean {
    for (;;) {
      this.#list.sort((a, b) => a.time - b.time || a.order - b.order);
      if (this.#list.length === 0 || this.#list[0]!.time > end) break;
      const { time, who, code, stamp } = this.#list.shift()!;
      this.now = time;
      this.events++;
      this.#actors[who]!.happen(code, stamp);
    }
    this.now = end;
    return this.#list.length > 0;
  }
}

/** An event to come, what it schedules in turn, and whether it throws after that or runs the calendar itself. */
interface Plan {
  readonly after: number;
  readonly leadsTo: readonly Plan[];
  readonly ends: 'well' | 'throws' | 'runs on';
}

const { plan } = fc.letrec<{ plan: Plan }>((tie) => ({
  plan: fc.record({
    after: fc.oneof(fc.integer({ min: 0, max: 3 }), fc.double({ min: 0, max: 3, noNaN: true })),
    leadsTo: fc.oneof(
      { maxDepth: 4, withCrossShrink: true },
      fc.constant([]),
      fc.array(tie('plan'), { minLength: 1, maxLength: 3 }),
    ),
    ends: fc.oneof(
      { weight: 20, arbitrary: fc.constant('well' as const) },
      fc.constantFrom('throws' as const, 'runs on' as const),
    ),
  }),
}));

/** Puts down the plans in turns, each followed by a run of so long, and tells all that could be seen. */
function told(calendar: Calendar | PlainCalendar, turns: readonly (readonly [readonly Plan[], number])[]) {
  const seen: unknown[] = [];
  const plans: Plan[] = [];
  const put = (next: Plan) => {
    const stamp = plans.push(next) - 1;
    calendar.schedule(calendar.now + next.after, actors[stamp % actors.length]!, stamp % 16, stamp);
  };
  const actors = Array.from({ length: 5 }, (_, who) =>
    calendar.enter({
      name: `${who}`,
      happen: (code, stamp) => {
        seen.push([who, code, stamp, calendar.now, calendar.pending, calendar.events]);
        const { leadsTo, ends } = plans[stamp]!;
        for (const next of leadsTo) put(next);
        if (ends === 'throws') throw new Error('as planned');
        if (ends === 'runs on') seen.push(calendar.run(calendar.now));
      },
    }),
  );
  for (const [now, length] of turns) {
    for (const next of now) put(next);
    try {
      seen.push(calendar.run(calendar.now + length));
    } catch (error) {
      seen.push((error as Error).message);
    }
    seen.push([calendar.now, calendar.pending, calendar.events]);
  }
  return seen;
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
          calendar.schedule(time, me, i % 16, i);
        });
        calendar.run(20);
        const expected = times
          .map((time, i) => ({ time, code: i % 16, stamp: i }))
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

  it('does what a plain sorted list does, whatever happens meanwhile', () => {
    const turns = fc.array(fc.tuple(fc.array(plan, { maxLength: 40 }), fc.integer({ min: 0, max: 4 })), {
      maxLength: 6,
    });
    fc.assert(
      fc.property(turns, (given) => {
        expect(told(new Calendar(), given)).toEqual(told(new PlainCalendar(), given));
      }),
      { numRuns: 300 },
    );
  });

  it('does so with thousands of events waiting', () => {
    const [calendar, plain] = [new Calendar(), new PlainCalendar()].map((it) => {
      const draw = new Streams(1).of('times');
      const seen: number[] = [];
      let left = 3000;
      const me = it.enter({
        name: 'x',
        happen: (_code, stamp) => {
          seen.push(it.now, stamp);
          for (let i = 0; i < 2 && left-- > 0; i++)
            it.schedule(it.now + Math.floor(50 * draw()), me, 0, left);
        },
      });
      for (let i = 0; i < 1000; i++) it.schedule(Math.floor(50 * draw()), me, 0, 5000 + i);
      it.run(1e4);
      return seen;
    });
    expect(calendar).toHaveLength(2 * 4000);
    expect(calendar).toEqual(plain);
  });

  it('hands every actor its own code and stamp', () => {
    const calendar = new Calendar();
    const seen: number[][] = [];
    for (let who = 0; who < 100; who++) {
      const me = calendar.enter({ name: 'x', happen: (code, stamp) => seen.push([who, code, stamp]) });
      calendar.schedule(who, me, who % 16, 1000 + who);
    }
    calendar.run(100);
    expect(seen).toEqual(Array.from({ length: 100 }, (_, who) => [who, who % 16, 1000 + who]));
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

  const caughtFrom = (work: () => void): unknown => {
    try {
      work();
    } catch (error) {
      return error;
    }
    return undefined;
  };

  it('explains an endless loop at one instant, with its time and its actor', () => {
    const calendar = new Calendar();
    const again: Actor = { name: 'press', happen: () => calendar.schedule(calendar.now, me, 0, 0) };
    const me = calendar.enter(again);
    calendar.schedule(3, me, 0, 0);
    const caught = caughtFrom(() => calendar.run(10)) as EndlessLoopError;
    expect(caught).toBeInstanceOf(EndlessLoopError);
    expect(caught.time).toBe(3);
    expect(new Set(caught.actors)).toEqual(new Set([again]));
    expect(caught.message).toContain('the last at "press":');
  });

  it.each([
    [2, 2],
    [6, 4],
  ])('of %d in the loop names %d, the latest first, and none from before it', (count, named) => {
    const calendar = new Calendar();
    const ring: number[] = [];
    for (let i = 0; i < count; i++) {
      const happen = () => calendar.schedule(calendar.now, ring[(i + 1) % count]!, 0, 0);
      ring.push(calendar.enter({ name: `a${i}`, happen }));
    }
    const before = calendar.enter({ name: 'before', happen: () => {} });
    for (const time of [2, 3, 3]) calendar.schedule(time, before, 0, 0);
    calendar.schedule(3, ring[0]!, 0, 0);
    const { message } = caughtFrom(() => calendar.run(10)) as EndlessLoopError;
    const places = message
      .match(/the last at ("\w+"(?:, "\w+")*):/)![1]!
      .split(', ')
      .map((name) => Number(/^"a(\d)"$/.exec(name)?.[1]));
    expect(places).toEqual(Array.from({ length: named }, (_, i) => (places[0]! - i + count) % count));
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
