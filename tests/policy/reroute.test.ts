import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import type { Line } from '../../src/line/line.ts';
import { blanks, ran, seconds, small } from '../line/small-line.ts';

/** A part every 10 s from 10 s on, to "a"; nothing feeds "b" but a policy. */
const line = (a: string, b: string, ...responses: string[]) => `${blanks(`
  feed: { does: work, takes: blank, cycle: 10 s, to: a }
  a: { does: work, ${a}, to: good }
  b: { does: work, ${b}, to: good }`)}
policies:
  carry on: []
  around: [${responses.map((response) => `{ ${response} }`).join(', ')}]`;
const around = (from: number, to: number, more = '') =>
  `do: reroute, at: feed, to: b, when: { from: ${from} s, to: ${to} s }${more}`;

describe('reroute', () => {
  it('sends parts the other way while it is in force', () => {
    const text = line('buffer: 9, cycle: 4 s', 'buffer: 9, cycle: 3 s', around(25, 45));
    // Of those at 10, 20, 30, 40 and 50 s the third and the fourth.
    const outcome = ran(small('59 s', text), 'around');
    expect(seconds(outcome, 'a', 59).working).toBe(12);
    expect(seconds(outcome, 'b', 59).working).toBe(6);
    expect(outcome.did).toEqual({ rerouted_feed_parts: 2 });
    expect(seconds(ran(small('59 s', text)), 'b', 59).working).toBeUndefined();
  });

  it('lets what waits for room go the other way at once, and back', () => {
    // "a" takes the first at 10 s; the second waits from 20 to 25 s, the next goes to "b", that of 45 s waits again.
    const out = line('buffer: 0, cycle: 99 s', 'buffer: 9, cycle: 1 s', around(25, 45));
    expect(seconds(ran(small('70 s', out), 'around'), 'feed', 70)).toEqual({ working: 40, blocked: 30 });
    // "b" takes the first at 10 s; the second waits until 25 s and goes to "a".
    const back = line('buffer: 9, cycle: 1 s', 'buffer: 0, cycle: 99 s', around(5, 25));
    expect(seconds(ran(small('70 s', back), 'around'), 'feed', 70)).toEqual({ working: 65, blocked: 5 });
  });

  it('twice goes by the later that is in force', () => {
    const text = line(
      'buffer: 9, cycle: 4 s',
      'buffer: 9, cycle: 3 s',
      around(5, 45),
      around(15, 25).replace('to: b', 'to: c'),
    ).replace('\npolicies', '\n  c: { does: work, buffer: 9, cycle: 2 s, to: good }\npolicies');
    const outcome = ran(small('49 s', text), 'around');
    const working = (name: string) => seconds(outcome, name, 49).working;
    expect(['a', 'b', 'c'].map(working)).toEqual([undefined, 9, 2]);
  });

  it('lets what goes past the station and waits for room behind it go the other way at once, too', () => {
    // The part of 10 s goes past "a" and is at "c" for long; that of 20 s waits at "feed" until "b" takes what leaves "a".
    const past = `${blanks(`
  feed: { does: work, takes: blank, cycle: 10 s, to: a }
  a: { does: work, buffer: 1, cycle: 4 s, to: c }
  b: { does: work, buffer: 9, cycle: 1 s, to: good }
  c: { does: work, buffer: 0, cycle: 999 s, to: good }`)}
policies:
  around:
    - { do: skip, station: a, later: no, when: { from: 5 s } }
    - { do: reroute, at: a, to: b, when: { from: 45 s } }`;
    const outcome = ran(small('75 s', past), 'around');
    expect(seconds(outcome, 'feed', 75)).toEqual({ working: 50, blocked: 25 });
    expect(outcome.did).toEqual({ rerouted_a_parts: 4, skipped_a_parts: 5 });
  });

  it('leaves the way of every other part as it is', () => {
    const text = line(
      'buffer: 9, cycle: 1 s',
      'buffer: 9, cycle: 1 s',
      around(100, 300).replace('to: b', 'to: c'),
    )
      .replace('to: a }', 'to: { by: share, routes: { a: 50 %, b: 50 % } } }')
      .replace('\npolicies', '\n  c: { does: work, buffer: 9, cycle: 2 s, to: good }\npolicies');
    /** When parts come to "a". */
    const times = (policy: string) => {
      const line: Line = prepare(small('500 s', text), policy, 1);
      const seen: number[] = [];
      const { inbox } = line.stations.get('a')!.machines[0]!;
      const accept = inbox!.accept.bind(inbox);
      inbox!.accept = (row) => {
        seen.push(line.calendar.now);
        return accept(row);
      };
      line.calendar.run(500);
      return seen;
    };
    const usual = times('carry on');
    expect(usual.length).toBeGreaterThan(10);
    expect(times('around')).toEqual(usual.filter((time) => time < 100 || time >= 300));
  });

  it('is waited for where stations that wait for each other may still go another way', () => {
    // Nearly all parts of "b" go back to "a", so that soon both are full and wait for each other.
    const round = `${blanks(`
  feed: { does: work, takes: blank, cycle: 1 s, to: a }
  a: { does: work, buffer: 1, cycle: 2 s, to: b }
  b: { does: work, buffer: 1, cycle: 2 s, to: { by: share, routes: { a: 99 %, good: 1 % } } }
  c: { does: work, buffer: 9, cycle: 1 s, to: good }`)}
policies:
  carry on: []
  around: [{ do: reroute, at: b, to: c, when: { from: 300 s } }]`;
    expect(() => ran(small('900 s', round))).toThrow('the line came to a standstill');
    // One every 2 s from 300 s on, once they go again.
    expect(ran(small('900 s', round), 'around').counts.good).toBeGreaterThan(290);
  });
});
