import { describe, expect, it } from 'vitest';
import { blanks, ran, seconds, small } from './small-line.ts';

describe('a heated station', () => {
  it('is cold at the start, and warms up again after it idled for longer than it may', () => {
    // Warms up 10-13, works 13-15; idles for 5 s, which it may, works 20-22; idles for 8 s, warms up 30-33, works 33-35.
    const body = blanks(`  a: { does: work, takes: blank, cycle: 10 s, to: b }
  b: { does: work, buffer: 0, cycle: 2 s, warm-up: { after: 5 s, takes: 3 s }, to: good }`);
    const outcome = ran(small('35 s', body));
    expect(outcome.counts.good).toBe(3);
    expect(seconds(outcome, 'b', 35)).toEqual({ starved: 10 + 5 + 8, set_up: 6, working: 6 });
  });

  const oven =
    '  oven: { does: work, takes: blank, cycle: 10 s, warm-up: { after: 5 s, takes: 3 s }, to: good }';

  it('that was stopped and lost its part is as warm as when it was stopped', () => {
    // Warms up 0-3, works 3-13 and 13-20, is down 20-21, works 21-31: it stood still for 1 s.
    const body = `${blanks(oven)}
disturbances:
  stoppage: { disturbs: station, station: oven, cycle: scraps, at: 20 s, for: 1 s }`;
    const outcome = ran(small('31 s', body));
    expect(outcome.counts).toMatchObject({ good: 2, scrapped: 1 });
    expect(seconds(outcome, 'oven', 31)).toEqual({ set_up: 3, working: 27, down: 1 });
  });

  it('warms up after a long stop between two cycles', () => {
    // Works 3-13; b takes 20 s from 13 on, so the part of 23 leaves at 33: warms up 33-36.
    const body = blanks(`${oven.replace('good', 'b')}
  b: { does: work, buffer: 0, cycle: 20 s, to: good }`);
    expect(seconds(ran(small('36 s', body)), 'oven', 36)).toEqual({ set_up: 6, working: 20, blocked: 10 });
  });

  it.each([
    // Warms up 0-3, works 3-13 and 13-20 until the end of its shift; warms up 100-103 and works on from 103.
    ['resumes', '106 s', { good: 2, scrapped: 0 }, { set_up: 6, working: 20, off_shift: 80 }],
    ['restarts', '113 s', { good: 2, scrapped: 0 }, { set_up: 6, working: 27, off_shift: 80 }],
    ['scraps', '113 s', { good: 2, scrapped: 1 }, { set_up: 6, working: 27, off_shift: 80 }],
  ])('warms up before it goes on with a cycle that the end of the shift %s', (end, length, counts, spent) => {
    const body = `${blanks(oven.replace('to:', `calendar: hours, shift-end: ${end}, to:`))}
calendars:
  hours: { shifts: [{ days: [mon], begins: 0 s, lasts: 20 s }, { days: [mon], begins: 100 s, lasts: 1 h }] }`;
    const outcome = ran(small(length, body));
    expect(outcome.counts).toMatchObject(counts);
    expect(seconds(outcome, 'oven', Number.parseInt(length, 10))).toEqual(spent);
  });

  it('warms up after a long repair, and stops again for what comes meanwhile', () => {
    // Warms up 0-3, works 3-8, is down 8-18; warms up from 18 on, stands still 20-25, by when it is warm, works 25-30.
    const body = `${blanks(oven)}
disturbances:
  long: { disturbs: station, station: oven, at: 8 s, for: 10 s }
  short: { disturbs: station, station: oven, at: 20 s, for: 5 s }`;
    const outcome = ran(small('30 s', body));
    expect(outcome.counts.good).toBe(1);
    expect(seconds(outcome, 'oven', 30)).toEqual({ set_up: 3 + 2, working: 10, down: 15 });
  });

  it('is warmed up each machine by itself', () => {
    // a's parts of 4, 8, 12, ...: the first machine takes each, 3 s of warming up at 4 and then within 5 s of its last.
    const body = blanks(`  a: { does: work, takes: blank, cycle: 4 s, to: b }
  b: { does: work, machines: 2, buffer: 0, cycle: 1 s, warm-up: { after: 5 s, takes: 4 s }, to: good }`);
    // b 1 warms up 4-8, works 8-9; the part of 8 finds it busy and goes to b 2, which warms up 8-12 and works 12-13;
    // b 1 works on that of 12, 12-13, and of 16, 16-17.
    const outcome = ran(small('17 s', body));
    expect(seconds(outcome, 'b', 17)).toEqual({
      set_up: (4 + 4) / 2,
      working: (3 + 1) / 2,
      starved: (10 + 12) / 2,
    });
  });
});
