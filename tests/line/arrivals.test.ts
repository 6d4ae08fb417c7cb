import { describe, expect, it } from 'vitest';
import { ran, seconds, small } from './small-line.ts';

const door = (rest: string, buffer: number | string, cycle: string) => `
stations:
  entrance: { does: arrive, ${rest}, to: b }
  b: { does: work, buffer: ${buffer}, cycle: ${cycle}, to: good }`;

describe('arrivals', () => {
  it('that find no room wait, and the next is timed from when they got in', () => {
    // They come at 2, 4, 6 and, 2 s after the third got in at 7, at 9; that one gets in at 12, so the next comes at 14.
    const outcome = ran(small('14 s', door('every: 2 s', 1, '5 s')));
    expect(outcome.counts).toMatchObject({ started: 5, good: 2, turnedAway: 0 });
    expect(outcome.measures.turned_away_rate).toBeNull();
    expect(seconds(outcome, 'entrance', 14)).toEqual({ working: 10, blocked: 4 });
    // Born when they come: 2-7 and 4-12.
    expect(outcome.measures.lead_time_s).toBeCloseTo((5 + 8) / 2, 9);
  });

  it('that find no room are turned away, and counted, where it is said', () => {
    // b works 2-7 on the first and from 7 on that of 4, takes the one of 8 at 12. Those of 6, 10 and 14 find the place
    // in front taken; that of 12 finds it just left.
    const outcome = ran(small('14 s', door('every: 2 s, when-full: lost', 1, '5 s')));
    expect(outcome.counts).toMatchObject({ started: 7, good: 2, turnedAway: 3, scrapped: 0 });
    expect(outcome.measures.turned_away_rate).toBeCloseTo(3 / 7, 12);
    expect(seconds(outcome, 'entrance', 14)).toEqual({ working: 14 });
    // In the line: one 2-4, two 4-7, one 7-8, two 8-12 and two from 12 on.
    expect(outcome.measures.work_in_progress_parts).toBeCloseTo((2 + 6 + 1 + 8 + 4) / 14, 9);
  });

  it('go by their own routes', () => {
    const body = `
stations:
  entrance: { does: arrive, every: 1 s, when-full: lost, to: { by: priority, routes: [a, b] } }
  a: { does: work, buffer: 0, cycle: 10 s, to: good }
  b: { does: work, buffer: 0, cycle: 10 s, to: good }`;
    // To a at 1 and to b at 2; those of 3 to 10 are turned away; that of 11 finds a just left.
    expect(ran(small('11 s', body)).counts).toMatchObject({ started: 11, turnedAway: 8, good: 1 });
  });

  it('come in working hours alone: the time to the next stands still out of them', () => {
    // 4 s of work from 0, 100 and 200 on, an arrival every 3 s of them: at 3, 102, 201 and 204. The last comes at the
    // very end of its shift.
    const hours = [0, 100, 200]
      .map((begins) => `{ days: [mon], begins: ${begins} s, lasts: 4 s }`)
      .join(', ');
    const body = `${door('every: 3 s, calendar: hours', 'unlimited', '1 s')}
calendars:
  hours: { shifts: [${hours}] }`;
    const outcome = ran(small('300 s', body));
    expect(outcome.counts).toMatchObject({ started: 4, good: 4 });
    expect(seconds(outcome, 'entrance', 300)).toEqual({ working: 12, off_shift: 288 });
  });

  it('that are turned away are no parts of which a share is scrapped', () => {
    // One a second; a takes one in 10 s at most, and its stops scrap some.
    const body = `
stations:
  entrance: { does: arrive, every: 1 s, when-full: lost, to: a }
  a:
    does: work
    buffer: 0
    cycle: 10 s
    breakdowns: { stop: { every: { distribution: empirical, values: [3 s, 30 s] }, counted: clock, repair: 7 s, cycle: scraps } }
    to: good
`;
    const { counts, measures } = ran(small('1 h', body));
    expect(counts.turnedAway).toBeGreaterThan(counts.started / 2);
    expect(measures.scrap_rate).toBeCloseTo(counts.scrapped / (counts.started - counts.turnedAway), 12);
    expect(measures.scrap_rate).toBeGreaterThan(0.1);
  });
});
