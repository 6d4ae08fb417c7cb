import { describe, expect, it } from 'vitest';
import { EndlessLoopError } from '../../src/kernel/calendar.ts';
import type { Waiter } from '../../src/line/place.ts';
import { refuseStandstill, StandstillError } from '../../src/line/standstill.ts';
import { blanks, ran, small } from './small-line.ts';

/** Every part is read off limits, for the gauge is 10 mm out: all go round by the bench. */
const knot = (benchBuffer: number | string) => `
stock:
  sheet: { unlimited: true }
parts:
  tray:
    features:
      rim: { nominal: 100 mm, tolerance: 1 mm, made-at: forming }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 2, cycle: 2 s, to: gauging }
  gauging:
    does: gauge
    buffer: 1
    cycle: 1 s
    every: 1
    measures:
      rim: { bias: 10 mm, repeatability: 0 mm }
    off-limits: bench
    to: good
  bench:
    does: rework
    buffer: ${benchBuffer}
    cycle: 3 s
    limit: 4
    corrects: {}
    to: gauging`;

describe('a standstill', () => {
  it('of a gauge and a bench that wait for room at each other is found and named', () => {
    let caught: unknown;
    try {
      ran(small('1 h', knot(1)));
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(StandstillError);
    const { message } = caught as Error;
    expect(message).toContain('"gauging" waits for room in front of "bench"');
    expect(message).toContain('"bench" waits for room in front of "gauging"');
    expect(message).not.toContain('forming');
  });

  it('is found also when a station of the circle is down at the end of the run', () => {
    const stopped =
      '\ndisturbances:\n  halt: { disturbs: station, station: gauging, at: 50 min, for: 20 min }';
    expect(() => ran(small('1 h', knot(1) + stopped))).toThrow(StandstillError);
  });

  it('cannot come before a bench with unlimited room, where every part ends as scrap after its last visit', () => {
    const { counts } = ran(small('1 h', knot('unlimited')));
    expect(counts.good).toBe(0);
    expect(counts.scrapped).toBeGreaterThan(0);
  });

  it('is not seen in a line that is only blocked for a while', () => {
    const body = `
stock:
  blank: { unlimited: true }
stations:
  a: { does: work, takes: blank, cycle: 1 s, to: b }
  b: { does: work, buffer: 0, cycle: 1 s, to: c }
  c: { does: work, buffer: 0, cycle: 1000 s, to: good }`;
    expect(ran(small('900 s', body)).stateShares.a!.blocked).toBeGreaterThan(0.9);
  });

  it('tells the time at which the circle closes', () => {
    // Trays come at 2, two at a time. The gauge takes 2-3 for the first and sends it to the bench, where it is 3-6; the
    // second, 3-4, waits for the bench; the third, 4-5, finds that place taken. At 6 the bench is done, and of the sheet
    // of 4 the second tray has stood in front of the gauge since then.
    expect(() => ran(small('1 h', knot(1)))).toThrow('came to a standstill at 6 s:');
    expect(() => ran(small('5.9 s', knot(1)))).not.toThrow();
  });

  it('is found in a circle of routes', () => {
    // Nearly no part leaves from c. b works on the first 1-2, c 2-3; it is back in front of b at 3 and again on b 3-4.
    // Then parts p2 (c 3-4), p3 (b 4-5) follow; c gets rid of p2 at 4 when b takes p3, b of p1 at 4 and of p3 at 5.
    // From 5 on p4 stands in front of b, c is blocked by it with p1, p3 stands in front of c, and b, working 5-6 on
    // p2, is blocked by that at 6.
    const body = blanks(`  a: { does: work, takes: blank, cycle: 1 s, to: b }
  b: { does: work, buffer: 1, cycle: 1 s, to: c }
  c: { does: work, buffer: 1, cycle: 1 s, to: { by: share, routes: { b: 99.9999 %, good: 0.0001 % } } }`);
    let caught: unknown;
    try {
      ran(small('1 h', body));
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(StandstillError);
    const { message } = caught as Error;
    expect(message).toContain('at 6 s');
    expect(message).toContain('"b" waits for room in front of "c"');
    expect(message).toContain('"c" waits for room in front of "b"');
    expect(message).not.toContain('"a"');
  });

  it('is found when one that came first takes the last place on a belt that keeps parts apart', () => {
    // Two trays every 20 s: on the belt at 20 and 28, then at 48 and, 8 s later, at 56. The gauge sends the first to the
    // bench, 32-52, and is blocked with the second from 40 on. At 52 the bench is done while the belt has a place left but
    // takes nothing before 56, when it goes to the tray that waited longer. Nobody is blocked at that moment.
    const belt = knot(0)
      .replace('cycle: 2 s', 'cycle: 20 s')
      .replace(
        'buffer: 1\n    cycle: 1 s',
        'buffer: { places: 2, transit: 10 s, spacing: 8 s }\n    cycle: 2 s',
      )
      .replace('cycle: 3 s', 'cycle: 20 s');
    expect(() => ran(small('1 h', belt))).toThrow(
      'at 56 s: "bench" waits for room in front of "gauging", "gauging" waits for room in front of "bench"',
    );
    expect(() => ran(small('55 s', belt))).not.toThrow();
  });

  it('is found where all carriers lie in batches that are not complete', () => {
    // Four pallets. b's first four come at 10 to 40 and are done at 50; c takes three of them, 50-60, and keeps the fourth.
    // The pallets of the three bring three parts, the last at 90, and b waits for the fourth.
    const pallets = (number: number, to = '') =>
      blanks(`  a: { does: work, takes: blank, cycle: 10 s, to: b }
  b: { does: work, batch: 4, buffer: 4, cycle: 10 s, to: c }
  c: { does: work, batch: 3, buffer: 4, cycle: 10 s, to: good }
carriers: { pallet: { number: ${number}, from: a${to} } }`);
    expect(() => ran(small('1 h', pallets(4)))).toThrow(
      'at 90 s: "a" waits for carriers "pallet", "b" waits for 4 parts and has 3, "c" waits for 3 parts and has 1.',
    );
    expect(() => ran(small('89 s', pallets(4)))).not.toThrow();
    // With so many, or where c's parts have left them, one batch is always complete.
    expect(ran(small('1 h', pallets(4 - 1 + 3 - 1 + 1))).counts.good).toBeGreaterThan(200);
    expect(ran(small('1 h', pallets(4, ', to: b'))).counts.good).toBeGreaterThan(200);
  });

  it('is not seen where parts without a carrier complete the batch', () => {
    const body = blanks(`  a: { does: work, takes: blank, cycle: 10 s, to: b }
  bare: { does: arrive, every: 100 s, to: b }
  b: { does: work, batch: 4, buffer: 4, cycle: 10 s, to: good }
carriers: { pallet: { number: 3, from: a } }`);
    // Three pallets and one arrival a batch.
    expect(ran(small('1010 s', body)).counts.good).toBe(40);
  });

  it('needs all machines of a station: one that still works can open the circle', () => {
    // The same with a second machine at b that is never both blocked while c waits: the circle holds four parts, and
    // the one machine that works sends its part on or is blocked last.
    const body = (machines: number) =>
      blanks(`  a: { does: work, takes: blank, cycle: 1 s, to: b }
  b: { does: work, machines: ${machines}, buffer: 1, cycle: { distribution: exponential, mean: 1 s }, to: c }
  c: { does: work, buffer: 1, cycle: 1 s, to: { by: share, routes: { b: 99.9999 %, good: 0.0001 % } } }`);
    const closedAt = (machines: number) => {
      try {
        ran(small('1 h', body(machines)));
      } catch (error) {
        expect(error).toBeInstanceOf(StandstillError);
        const { message } = error as Error;
        for (let i = 1; i <= machines; i++) expect(message).toContain(machines === 1 ? '"b"' : '"b ');
        return Number(/standstill at ([\d.e+-]+) s/.exec(message)![1]);
      }
      throw new Error('no standstill');
    };
    // With more machines more parts are needed to close the circle, and a brings one a second.
    expect(closedAt(3)).toBeGreaterThan(6);
  });

  it('is not seen where one of several ways leads out, nor where orders will take what is made', () => {
    const fork = (more: string) =>
      `${blanks(`  a: { does: work, takes: blank, cycle: 1 s, to: b }
  b: { does: work, buffer: 1, cycle: 1 s, to: c }
  c: { does: work, buffer: 1, cycle: 1 s, to: { by: priority, routes: [b, good] } }`)}${more}`;
    expect(ran(small('1 h', fork(''))).counts.good).toBeGreaterThan(0);
    const orders = '\ndemand: { every: 100 s, due-after: 1 s, finished-goods: { most: 1 } }';
    const { counts, stateShares } = ran(small('1 h', fork(orders)));
    // One fills the stock, and each order but perhaps the last makes room for one more.
    expect(counts.good).toBe(1 + 36);
    expect(stateShares.b!.blocked).toBeGreaterThan(0.9);
  });

  it('is told of the circle, not of who leads into it', () => {
    // w waits for x, and x and y wait for each other.
    const machine = (name: string, behind: () => Waiter): Waiter & { machines: Waiter[] } => {
      const own = {
        ...{ name, blockedRow: 0, couldStart: false, wake() {} },
        machines: [] as Waiter[],
        get blockedAt() {
          const consumer = behind() as never;
          return { accept: () => false, wait() {}, doors: () => [{ open: false, consumer }] };
        },
      };
      own.machines.push(own);
      return own;
    };
    const x: Waiter = machine('x', () => y);
    const y: Waiter = machine('y', () => x);
    const w = machine('w', () => x);
    expect(() => refuseStandstill(w, 7)).toThrow(
      'at 7 s: "x" waits for room in front of "y", "y" waits for room in front of "x".',
    );
  });
});

describe('an endless loop at one instant', () => {
  it('is stopped, and those who take part are named', () => {
    const body = blanks(`  a: { does: work, takes: blank, cycle: 10 s, to: b }
  b: { does: work, buffer: 2, cycle: 0 s, to: c }
  c: { does: work, buffer: 1, cycle: 0 s, to: { by: share, routes: { b: 99.99999999 %, good: 0.00000001 % } } }
  d: { does: work, takes: blank, cycle: 5 s, to: good }`);
    let caught: unknown;
    try {
      ran(small('1 h', body));
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(EndlessLoopError);
    const { message } = caught as Error;
    expect(message).toContain('at 10 s');
    expect(message).toMatch(/"b", "c"|"c", "b"/);
    expect(message).not.toMatch(/"a"|"d"/);
  });
});
