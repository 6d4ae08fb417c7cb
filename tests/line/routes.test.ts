import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { blanks, ran, seconds, small } from './small-line.ts';

describe('routes by share', () => {
  it('get their shares of the parts in the long run', () => {
    // A part a second, each takes a second at a or at b: the working share of a is its share of the parts.
    const body =
      blanks(`  source: { does: work, takes: blank, cycle: 1 s, to: { by: share, routes: { a: 30 %, b: 70 % } } }
  a: { does: work, buffer: unlimited, cycle: 1 s, to: good }
  b: { does: work, buffer: unlimited, cycle: 1 s, to: good }`);
    const parts = 100_000;
    const { stateShares } = ran(small(`${parts} s`, body));
    // Each part goes to a with chance 0.3 by itself: a binomial share. Those that wait at the end, the root of the
    // number at most, are within the tolerance of 4 standard errors; with a fixed seed this holds always or never.
    const error = Math.sqrt((0.3 * 0.7) / parts);
    expect(Math.abs(stateShares.a!.working - 0.3)).toBeLessThan(4 * error);
    expect(Math.abs(stateShares.b!.working - 0.7)).toBeLessThan(4 * error);
  });

  const inspected = `
stock:
  sheet: { unlimited: true }
parts:
  tray: { features: { rim: { nominal: 100 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 2, cycle: 2 s, to: gauging }
  gauging:
    does: gauge
    buffer: 3
    cycle: 3 s
    every: 100
    measures: { rim: { repeatability: 0 mm } }
    off-limits: pass
    to: { by: share, routes: { a: 40 %, b: 60 % } }
  a: { does: work, buffer: 2, cycle: 1 s, to: good }
  b: { does: work, buffer: 2, cycle: 2 s, to: good }
policies:
  carry on: []
  inspect all:
    - { do: inspect, at: gauging, every: 1 }`;

  it('send the k-th part the same way under every policy of a seed', () => {
    const scenario = small('1 h', inspected);
    const ways = (policy: string) => {
      const line = prepare(scenario, policy, 3);
      const numbers = new Map<number, number>();
      const way: string[] = [];
      const came: number[] = [];
      let started = 0;
      const forming = line.stations.get('forming')!.machines[0]!.operation;
      const begin = forming.begin.bind(forming);
      forming.begin = (machine) => {
        const begun = begin(machine);
        if (begun) for (let i = 0; i < machine.loaded; i++) numbers.set(machine.load[i]!, started++);
        return begun;
      };
      for (const name of ['a', 'b']) {
        const { operation } = line.stations.get(name)!.machines[0]!;
        const ownBegin = operation.begin.bind(operation);
        operation.begin = (machine) => {
          const begun = ownBegin(machine);
          if (begun) {
            const number = numbers.get(machine.load[0]!)!;
            way[number] = name;
            came[number] = line.calendar.now;
          }
          return begun;
        };
      }
      line.calendar.run(3600);
      return { way, came };
    };
    const plain = ways('carry on');
    const other = ways('inspect all');
    const both = Math.min(plain.way.length, other.way.length) - 10;
    expect(both).toBeGreaterThan(500);
    expect(other.way.slice(0, both)).toEqual(plain.way.slice(0, both));
    // The policies do differ.
    expect(other.came.slice(0, both)).not.toEqual(plain.came.slice(0, both));
    expect(new Set(plain.way.slice(0, both))).toEqual(new Set(['a', 'b']));
  });

  it('let a part wait for its own way though another is free', () => {
    // The first parts of which the first two go to a, found by the seed: the second waits for a, which takes 100 s.
    const body =
      blanks(`  source: { does: work, takes: blank, cycle: 1 s, to: { by: share, routes: { a: 99.9999 %, b: 0.0001 % } } }
  a: { does: work, buffer: 0, cycle: 100 s, to: good }
  b: { does: work, buffer: 0, cycle: 1 s, to: good }`);
    expect(seconds(ran(small('50 s', body)), 'source', 50)).toEqual({ working: 2, blocked: 48 });
  });
});

describe('routes by priority', () => {
  const fork = (cycle: string, by: string, more = '') =>
    blanks(`  source: { does: work, takes: blank, cycle: ${cycle}, to: { by: ${by}, routes: [a, b] } }
  a: { does: work, buffer: 0, cycle: 3 s, to: good${more} }
  b: { does: work, buffer: 0, cycle: 3 s, to: good }`);

  it('go to the first that has room', () => {
    // To a at 1, to b at 2; that of 3 waits until a is free at 4. To b at 5; that of 6 waits until 7.
    const outcome = ran(small('7 s', fork('1 s', 'priority')));
    expect(outcome.counts.good).toBe(3);
    expect(seconds(outcome, 'source', 7)).toEqual({ working: 5, blocked: 2 });
    expect(seconds(outcome, 'a', 7)).toEqual({ starved: 1, working: 6 });
    expect(seconds(outcome, 'b', 7)).toEqual({ starved: 2, working: 5 });
  });

  it('never go to the second while the first is free', () => {
    const outcome = ran(small('40 s', fork('4 s', 'priority')));
    expect(seconds(outcome, 'b', 40)).toEqual({ starved: 40 });
  });

  it('may lead out of the line', () => {
    const body =
      blanks(`  source: { does: work, takes: blank, cycle: 1 s, to: { by: priority, routes: [a, good] } }
  a: { does: work, buffer: 0, cycle: 10 s, to: good }`);
    // a is busy from 1 to 11: the parts of 2 to 10 leave as they are, those of 1 leaves a at 11, when it takes the next.
    expect(ran(small('11 s', body)).counts).toMatchObject({ started: 12, good: 9 + 1 });
  });
});

describe('routes by state', () => {
  const fork = (places: number | string, a = '', more = '') =>
    `${blanks(`  source: { does: work, takes: blank, cycle: 2 s, to: { by: state, routes: [a, b] } }
  a: { does: work, buffer: ${places}, cycle: 10 s, to: good${a} }
  b: { does: work, buffer: unlimited, cycle: 10 s, to: good }`)}${more}`;

  it('go where fewest parts are, and of equals to the first', () => {
    // To a at 2, to b at 4, to a at 6, to b at 8, ...
    const outcome = ran(small('12 s', fork('unlimited')));
    expect(seconds(outcome, 'a', 12)).toEqual({ starved: 2, working: 10 });
    expect(seconds(outcome, 'b', 12)).toEqual({ starved: 4, working: 8 });
  });

  it.each([
    // a breaks down at 1 s.
    ['down', '', '\ndisturbances:\n  stop: { disturbs: station, station: a, at: 1 s, for: 1 h }'],
    ['down', ', maintenance: { oil: { every: 1 s, counted: clock, takes: 1 h } }', ''],
    [
      'off_shift',
      ', calendar: late',
      '\ncalendars:\n  late: { shifts: [{ days: [mon], begins: 1 h, lasts: 1 h }] }',
    ],
  ])('go to another station while one is %s', (state, a, more) => {
    const outcome = ran(small('12 s', fork('unlimited', a, more)));
    expect(outcome.stateShares.a![state as 'down']).toBeGreaterThan(0.9);
    expect(seconds(outcome, 'b', 12)).toEqual({ starved: 2, working: 10 });
  });

  it('go to a station that is down when no other has room', () => {
    // b takes the part of 2; those of 4, 6, ... go to a, down from 1 to 5, which works 5-15.
    const body = `${blanks(`  source: { does: work, takes: blank, cycle: 2 s, to: { by: state, routes: [a, b] } }
  a: { does: work, buffer: 5, cycle: 10 s, to: good }
  b: { does: work, buffer: 0, cycle: 20 s, to: good }`)}
disturbances:
  stop: { disturbs: station, station: a, at: 1 s, for: 4 s }`;
    const outcome = ran(small('15 s', body));
    expect(seconds(outcome, 'a', 15)).toEqual({ starved: 1, down: 4, working: 10 });
    expect(outcome.counts.good).toBe(1);
  });
});

describe('a part that waits at several places', () => {
  it('goes to one of them, once, when both get room at the same instant', () => {
    // a works 1-10, b 2-10. The part of 3 is blocked to 10 and goes to a; that of 11 goes to b, and that of 12 is blocked.
    const body =
      blanks(`  source: { does: work, takes: blank, cycle: 1 s, to: { by: priority, routes: [a, b] } }
  a: { does: work, buffer: 0, cycle: 9 s, to: good }
  b: { does: work, buffer: 0, cycle: 8 s, to: good }`);
    const outcome = ran(small('13 s', body));
    expect(outcome.counts).toMatchObject({ started: 5, good: 2 });
    expect(seconds(outcome, 'source', 13)).toEqual({ working: 3 + 2, blocked: 7 + 1 });
    expect(seconds(outcome, 'a', 13)).toEqual({ starved: 1, working: 12 });
    expect(seconds(outcome, 'b', 13)).toEqual({ starved: 3, working: 10 });
  });
});
