import { describe, expect, it } from 'vitest';
import { blanks, ran, seconds, small } from './small-line.ts';

const worksBy = (shifts: string, cycle: string, more = '') =>
  `${blanks(`  only: { does: work, takes: blank, cycle: ${cycle}, calendar: hours, to: good${more} }`)}
calendars:
  hours: { shifts: [${shifts}] }`;

describe('the end of a shift', () => {
  const two = '{ days: [mon], begins: 0 s, lasts: 25 s }, { days: [mon], begins: 100 s, lasts: 25 s }';

  it.each([
    // Parts leave at 10, 20, 30, 110 and 120 s, and one is under way at the end.
    ['finishes', { started: 6, good: 5, scrapped: 0 }, 54],
    // At 10, 20, then 5 s into the second shift, and at 115 s, when a fifth is begun.
    ['resumes', { started: 5, good: 4, scrapped: 0 }, 49],
    // At 10, 20, and 10 s into the second shift, and at 120 s.
    ['restarts', { started: 5, good: 4, scrapped: 0 }, 49],
    // The same, but the third part is lost and another begun in its stead.
    ['scraps', { started: 6, good: 4, scrapped: 1 }, 49],
  ])('%s with the cycle under way', (end, counts, working) => {
    const body = worksBy(two, '10 s', `, shift-end: ${end}`);
    const outcome = ran(small('124 s', body));
    expect(outcome.counts).toMatchObject(counts);
    expect(seconds(outcome, 'only', 124)).toEqual({ working, off_shift: 124 - working });
  });

  it.each(['finishes', 'resumes', 'restarts', 'scraps'])('%s what is done at that very instant', (end) => {
    // The third part leaves at 30, when the shift ends.
    const body = worksBy('{ days: [mon], begins: 0 s, lasts: 30 s }', '10 s', `, shift-end: ${end}`);
    const outcome = ran(small('40 s', body));
    expect(outcome.counts).toMatchObject({ started: 3, good: 3, scrapped: 0 });
    expect(seconds(outcome, 'only', 40)).toEqual({ working: 30, off_shift: 10 });
  });

  it('comes for a break as well, wherever it stands in the list', () => {
    // Breaks 12-20 and 32-33; works 0-12, 20-28 (the second part), 28-32, 33-39 (the third).
    const breaks = '[{ after: 32 s, lasts: 1 s }, { after: 12 s, lasts: 8 s }]';
    const shift = `{ days: [mon], begins: 0 s, lasts: 1 h, breaks: ${breaks} }`;
    const outcome = ran(small('39 s', worksBy(shift, '10 s', ', shift-end: resumes')));
    expect(outcome.counts.good).toBe(3);
    expect(seconds(outcome, 'only', 39)).toEqual({ working: 30, off_shift: 9 });
  });
});

describe('the week', () => {
  const HOUR = 3600;
  const days = (n: number) => 24 * n * HOUR;

  it('has a weekend, and goes round', () => {
    // Five days of 6 h to 14 h, a part an hour.
    const body = worksBy('{ days: [mon, tue, wed, thu, fri], begins: 6 h, lasts: 8 h }', '1 h');
    for (const weeks of [1, 3]) {
      const outcome = ran(small(`${7 * weeks} d`, body));
      expect(outcome.counts.good).toBe(40 * weeks);
      expect(seconds(outcome, 'only', days(7 * weeks))).toEqual({
        ...{ working: 40 * HOUR * weeks, off_shift: 128 * HOUR * weeks },
      });
    }
    // Off from Friday 14 h to Monday 6 h.
    expect(seconds(ran(small('64 h', body, '110 h')), 'only', 64 * HOUR)).toEqual({ off_shift: 64 * HOUR });
  });

  it('has nights', () => {
    const body = worksBy('{ days: [mon], begins: 22 h, lasts: 8 h }', '1 h');
    expect(seconds(ran(small('22 h', body)), 'only', 22 * HOUR)).toEqual({ off_shift: 22 * HOUR });
    expect(ran(small('8 h', body, '22 h')).counts.good).toBe(8);
    expect(ran(small('48 h', body)).counts.good).toBe(8);
  });

  it('ends within a shift that goes on into the next', () => {
    // Sunday 22 h to Monday 6 h, the first of which began before the run: 0-6 h, then 8 h over the end of each week.
    const body = worksBy('{ days: [sun], begins: 22 h, lasts: 8 h }', '1 h');
    expect(ran(small('7 d', body)).counts.good).toBe(6 + 2);
    const outcome = ran(small('14 d', body));
    expect(outcome.counts.good).toBe(6 + 8 + 2);
    expect(seconds(outcome, 'only', days(14))).toEqual({
      working: 16 * HOUR,
      off_shift: days(14) - 16 * HOUR,
    });
  });

  it('of three shifts a day has no end', () => {
    const all = '[mon, tue, wed, thu, fri, sat, sun]';
    const body = worksBy(`{ days: ${all}, begins: 6 h, lasts: 24 h }`, '7 h', ', shift-end: scraps');
    const outcome = ran(small('14 d', body));
    expect(outcome.counts).toMatchObject({ good: 48, scrapped: 0 });
    expect(seconds(outcome, 'only', days(14))).toEqual({ working: days(14) });
  });
});

describe('beside a station that is off', () => {
  it('the buffer in front fills, and then the station before is blocked', () => {
    // The parts of 10 to 50 fill the buffer, that of 60 blocks a until b begins at 100.
    const body = `${blanks(`  a: { does: work, takes: blank, cycle: 10 s, to: b }
  b: { does: work, buffer: 5, cycle: 1 s, calendar: late, to: good }`)}
calendars:
  late: { shifts: [{ days: [mon], begins: 100 s, lasts: 1 h }] }`;
    const outcome = ran(small('106 s', body));
    expect(seconds(outcome, 'a', 106)).toEqual({ working: 66, blocked: 40 });
    expect(seconds(outcome, 'b', 106)).toEqual({ off_shift: 100, working: 6 });
    expect(outcome.counts.good).toBe(6);
  });

  it('what it had finished is passed on', () => {
    // a's second part, done at 2, is blocked until 10; the shift of a ends at 5.
    const body = `${blanks(`  a: { does: work, takes: blank, cycle: 1 s, calendar: early, to: b }
  b: { does: work, buffer: 0, cycle: 9 s, to: good }`)}
calendars:
  early: { shifts: [{ days: [mon], begins: 0 s, lasts: 5 s }] }`;
    const outcome = ran(small('19 s', body));
    expect(outcome.counts.good).toBe(2);
    expect(seconds(outcome, 'a', 19)).toEqual({ working: 2, blocked: 3, off_shift: 14 });
  });

  it('breakdowns by the clock go on, and it counts as off', () => {
    // Down 10-14 while off from 5 to 12: off 5-12, down 12-14, works 14-19 on the part begun at 0.
    const body = `${blanks(`  only:
    does: work
    takes: blank
    cycle: 10 s
    calendar: hours
    shift-end: resumes
    breakdowns: { leak: { every: 10 s, counted: clock, repair: 4 s, cycle: resumes } }
    to: good`)}
calendars:
  hours: { shifts: [{ days: [mon], begins: 0 s, lasts: 5 s }, { days: [mon], begins: 12 s, lasts: 1 h }] }`;
    const outcome = ran(small('19 s', body));
    expect(outcome.counts.good).toBe(1);
    expect(seconds(outcome, 'only', 19)).toEqual({ working: 10, off_shift: 7, down: 2 });
  });
});

describe('a station that waits for its crew when its shift ends', () => {
  const hours = `
crew:
  mate: { number: 1, calendar: early }
calendars:
  early: { shifts: [{ days: [mon], begins: 0 s, lasts: 12 s }, { days: [mon], begins: 100 s, lasts: 1 h }] }
  late: { shifts: [{ days: [mon], begins: 0 s, lasts: 20 s }, { days: [mon], begins: 100 s, lasts: 1 h }] }`;
  const only = (more: string) =>
    `${blanks(`  only: { does: work, takes: blank, cycle: 15 s, calendar: late, to: good, ${more} }`)}${hours}`;

  it('for a set-up counts as off until it is back on', () => {
    // Works 0-15, waits 15-20, is off 20-100, is set up 100-104, works 104-110.
    const outcome = ran(small('110 s', only('set-ups: { clean: { cycles: 1, takes: 4 s, crew: mate } }')));
    expect(seconds(outcome, 'only', 110)).toEqual({
      working: 21,
      awaiting_technician: 5,
      off_shift: 80,
      set_up: 4,
    });
  });

  it('to unload it counts as off until it is back on', () => {
    // Works 0-15, waits 15-20, is off 20-100, is unloaded 100-103, works 103-110.
    const outcome = ran(small('110 s', only('handling: { by: mate, unload: 3 s }')));
    expect(seconds(outcome, 'only', 110)).toEqual({ working: 25, awaiting_handling: 5, off_shift: 80 });
  });
});

describe('a crew off shift', () => {
  it('finishes the repair under way and lets the next wait', () => {
    // The crew works 0-15 and from 100 on. The station fails at 10, is repaired to 18, fails after 10 s more at 28
    // and waits for 100.
    const body = `${blanks(`  only:
    does: work
    takes: blank
    cycle: 1 h
    breakdowns: { stop: { every: 10 s, counted: working, repair: 8 s, cycle: resumes, crew: fitter } }
    to: good`)}
crew:
  fitter: { number: 1, calendar: hours }
calendars:
  hours: { shifts: [{ days: [mon], begins: 0 s, lasts: 15 s }, { days: [mon], begins: 100 s, lasts: 1 h }] }`;
    const outcome = ran(small('110 s', body));
    expect(seconds(outcome, 'only', 110)).toEqual({ working: 22, down: 16, awaiting_technician: 72 });
  });
});
