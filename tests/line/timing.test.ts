import { describe, expect, it } from 'vitest';
import { blanks, ran, seconds, small } from './small-line.ts';

describe('counting', () => {
  const one = blanks('  only: { does: work, takes: blank, cycle: 10 s, to: good }');

  it('leaves out what happens at the end of the warm-up and takes in what happens at the end of the run', () => {
    // Parts leave and start at 10, 20, ... s. In (100, 200] that is at 110 to 200.
    const { counts, measures } = ran(small('100 s', one, '100 s'));
    expect(counts).toMatchObject({ started: 10, good: 10, scrapped: 0 });
    expect(measures.throughput_per_h).toBeCloseTo(360, 9);
    expect(measures.work_in_progress_parts).toBeCloseTo(1, 9);
    expect(measures.lead_time_s).toBeCloseTo(10, 9);
  });

  it('of a window that holds one moment of leaving counts one', () => {
    expect(ran(small('10 s', one, '95 s')).counts.good).toBe(1);
    expect(ran(small('9 s', one, '100 s')).counts.good).toBe(0);
    expect(ran(small('10 s', one, '100 s')).counts.good).toBe(1);
  });

  it('covers everything when there is no warm-up, the load at 0 included', () => {
    // Started at 0, 10, 20 and 30.
    expect(ran(small('30 s', one)).counts).toMatchObject({ started: 4, good: 3 });
  });
});

describe('blocking after service', () => {
  const pair = (first: number, second: number, places: number | string) =>
    blanks(`  a: { does: work, takes: blank, cycle: ${first} s, to: b }
  b: { does: work, buffer: ${places}, cycle: ${second} s, to: good }`);

  it('keeps a finished part on its station until the next one can start it', () => {
    // a works 0-2, 2-4, 7-9, 12-14, 17-19 and is blocked 4-7, 9-12, 14-17, 19-22; b waits 0-2 for its first part.
    const outcome = ran(small('22 s', pair(2, 5, 0)));
    expect(outcome.counts.good).toBe(4);
    expect(seconds(outcome, 'a', 22)).toEqual({ working: 10, blocked: 12 });
    expect(seconds(outcome, 'b', 22)).toEqual({ working: 20, starved: 2 });
  });

  it('comes one part later for each place between the stations', () => {
    // a works 0-2, 2-4, 4-6, 7-9, 12-14, 17-19 and is blocked 6-7, 9-12, 14-17, 19-22.
    const outcome = ran(small('22 s', pair(2, 5, 1)));
    expect(seconds(outcome, 'a', 22)).toEqual({ working: 12, blocked: 10 });
  });

  it('never comes before an unlimited buffer', () => {
    // 11 parts leave a in 22 s and the 12th is begun, 4 leave b.
    const outcome = ran(small('22 s', pair(2, 5, 'unlimited')));
    expect(seconds(outcome, 'a', 22)).toEqual({ working: 22 });
    expect(outcome.counts).toMatchObject({ started: 12, good: 4 });
  });

  it('does not come before a faster station, which takes the part at once without a place between', () => {
    // b works 5-7, 10-12, 15-17, 20-22.
    const outcome = ran(small('22 s', pair(5, 2, 0)));
    expect(seconds(outcome, 'a', 22)).toEqual({ working: 22 });
    expect(seconds(outcome, 'b', 22)).toEqual({ working: 8, starved: 14 });
    expect(outcome.measures.lead_time_s).toBeCloseTo(7, 9);
  });

  it('comes up the whole line within the instant', () => {
    // c takes 9 s from 2 s on. a: 0-1, 1-2, 2-3, then blocked to 11, when b passes on and takes the next.
    const outcome = ran(
      small(
        '11 s',
        blanks(`  a: { does: work, takes: blank, cycle: 1 s, to: b }
  b: { does: work, buffer: 0, cycle: 1 s, to: c }
  c: { does: work, buffer: 0, cycle: 9 s, to: good }`),
      ),
    );
    expect(seconds(outcome, 'a', 11)).toEqual({ working: 3, blocked: 8 });
    expect(seconds(outcome, 'b', 11)).toEqual({ starved: 1, working: 2, blocked: 8 });
    // At 11 s all three hand on at once, and a starts its fourth.
    expect(outcome.counts).toMatchObject({ started: 4, good: 1 });
  });
});

describe('a stopped station', () => {
  const stopped = (cycle: string) =>
    `${blanks(`  only:
    does: work
    takes: blank
    cycle: 10 s
    to: good`)}
disturbances:
  stoppage: { disturbs: station, station: only, cycle: ${cycle}, at: 14 s, for: 20 s }`;

  it.each([
    // The cycle begun at 10 has 6 s left at 14, so parts leave at 10, 40, 50 and 60.
    ['resumes', { started: 5, good: 4, scrapped: 0 }],
    // It begins anew at 34: parts leave at 10, 44 and 54.
    ['restarts', { started: 4, good: 3, scrapped: 0 }],
    // The part is scrapped and a fresh one begun at 34: it leaves at 44, the next at 54.
    ['scraps', { started: 5, good: 3, scrapped: 1 }],
  ])('%s with its cycle as the stoppage says', (cycle, counts) => {
    const outcome = ran(small('60 s', stopped(cycle)));
    expect(outcome.counts).toMatchObject(counts);
    expect(seconds(outcome, 'only', 60)).toEqual({ working: 40, down: 20 });
  });

  const pair = (places: number, at: string) =>
    `${blanks(`  a: { does: work, takes: blank, cycle: 5 s, to: b }
  b: { does: work, buffer: ${places}, cycle: 2 s, to: good }`)}
disturbances:
  stoppage: { disturbs: station, station: b, at: ${at}, for: 10 s }`;

  it('takes no part over without a place between', () => {
    // b is down 4-14. a finishes at 5 and is blocked to 14; then its parts are done at 19 and 24.
    const outcome = ran(small('21 s', pair(0, '4 s')));
    expect(seconds(outcome, 'a', 21)).toEqual({ working: 12, blocked: 9 });
    // b works 14-16 and 19-21.
    expect(seconds(outcome, 'b', 21)).toEqual({ starved: 7, down: 10, working: 4 });
    expect(outcome.counts.good).toBe(2);
  });

  it('lets parts fill the places before it', () => {
    // The part done at 5 waits in the buffer, the one done at 10 blocks a to 14.
    const outcome = ran(small('21 s', pair(1, '4 s')));
    expect(seconds(outcome, 'a', 21)).toEqual({ working: 17, blocked: 4 });
  });

  it('still passes on what it had finished', () => {
    // b takes 9 s, from 1 on. a is blocked 2-5 with its second part, down 5-15, hands it over at 10, works 15-16, is
    // blocked 16-19 and works 19-20.
    const outcome = ran(
      small(
        '20 s',
        `${blanks(`  a: { does: work, takes: blank, cycle: 1 s, to: b }
  b: { does: work, buffer: 0, cycle: 9 s, to: good }`)}
disturbances:
  stoppage: { disturbs: station, station: a, at: 5 s, for: 10 s }`,
      ),
    );
    expect(seconds(outcome, 'a', 20)).toEqual({ working: 4, blocked: 6, down: 10 });
    expect(seconds(outcome, 'b', 20)).toEqual({ starved: 1, working: 19 });
    expect(outcome.counts.good).toBe(2);
  });

  it('may be stopped at the very instant it would have finished', () => {
    // Begun at 0.2 s, it would finish at 0.2 + 1.9 = 2.1; but 2.1 - 0.2 comes out a hair above 1.9.
    expect(1.9 - (0.2 + 1.9 - 0.2)).toBeLessThan(0);
    const outcome = ran(
      small(
        '3 s',
        `${blanks('  only: { does: work, takes: blank, cycle: 1.9 s, to: good }')}
disturbances:
  late start: { disturbs: station, station: only, at: 0 s, for: 0.2 s }
  hitch: { disturbs: station, station: only, at: 2.1 s, for: 0 s }`,
      ),
    );
    expect(outcome.counts).toMatchObject({ started: 2, good: 1 });
  });

  it('stays down until the last of several stops has ended', () => {
    const outcome = ran(
      small(
        '60 s',
        `${blanks('  only: { does: work, takes: blank, cycle: 10 s, to: good }')}
disturbances:
  one: { disturbs: station, station: only, at: 14 s, for: 20 s }
  two: { disturbs: station, station: only, at: 30 s, for: 10 s }`,
      ),
    );
    // Down 14-40; the cycle with 6 s left ends at 46, the next at 56.
    expect(seconds(outcome, 'only', 60)).toEqual({ working: 34, down: 26 });
    expect(outcome.counts.good).toBe(3);
  });
});

describe('breakdowns', () => {
  const worn = (counted: string) =>
    blanks(`  a: { does: work, takes: blank, cycle: 4 s, to: b }
  b:
    does: work
    buffer: 0
    cycle: 1 s
    to: good
    breakdowns: { stop: { every: 5 s, counted: ${counted}, repair: 2 s, cycle: resumes } }`);

  it('counted by working time come after so much work', () => {
    // b works 1 s in 4: its fifth second of work is 20-21, after which it is worn; the next work fails at once, at 24.
    const outcome = ran(small('27 s', worn('working')));
    expect(seconds(outcome, 'b', 27)).toEqual({ starved: 4 + 4 * 3 + 3, working: 6, down: 2 });
  });

  it('counted by the clock come whether the station works or not', () => {
    // Down 5-7, 12-14, 19-21, 26-27. b works 4-5, 8-9, then a's part of 12 waits to 14: 14-15, a goes on 14-18: 18-19,
    // 22-23, and a's part of 26 waits.
    const outcome = ran(small('27 s', worn('clock')));
    expect(seconds(outcome, 'b', 27)).toMatchObject({ down: 7, working: 5 });
    expect(seconds(outcome, 'a', 27)).toEqual({ working: 24, blocked: 3 });
  });
});

describe('forming several parts from a sheet', () => {
  it('passes them on one by one, and loads no sheet before all have left', () => {
    // Sheets are worked on 0-10, 16-26 and 32-42. Of the first, parts enter trimming at 10, 13, 16 and 19; with one
    // place between, the fourth leaves forming at 16.
    const outcome = ran(
      small(
        '42 s',
        `
stock:
  sheet: { unlimited: true }
parts:
  tray:
    features:
      rim: { nominal: 100 mm, made-at: forming }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 4, cycle: 10 s, to: trimming }
  trimming: { does: trim, buffer: 1, cycle: 3 s, to: good }`,
      ),
    );
    expect(seconds(outcome, 'forming', 42)).toEqual({ working: 30, blocked: 12 });
    expect(seconds(outcome, 'trimming', 42)).toEqual({ starved: 10 + 4 + 4, working: 24 });
    expect(outcome.counts).toMatchObject({ started: 12, good: 8 });
    // 13, 16, 19 and 22 s after the sheet was loaded, for both sheets.
    expect(outcome.measures.lead_time_s).toBeCloseTo(17.5, 9);
  });
});

describe('a station that takes no time', () => {
  it('hands on within the instant', () => {
    const outcome = ran(
      small(
        '50 s',
        blanks(`  a: { does: work, takes: blank, cycle: 10 s, to: b }
  b: { does: work, buffer: 0, cycle: 0 s, to: c }
  c: { does: work, buffer: 0, cycle: 10 s, to: good }`),
      ),
    );
    expect(seconds(outcome, 'a', 50)).toEqual({ working: 50 });
    expect(outcome.counts).toMatchObject({ started: 6, good: 4 });
  });
});

describe('the self-check', () => {
  it('does not mistake the resolution of the clock for work in no time', () => {
    // Late in a long run each cycle of 0.2 s ends a hair early, always the same way: 190 days are enough to see it.
    const body = blanks(`  a: { does: work, takes: blank, cycle: 60 s, to: b }
  b: { does: work, buffer: 1, cycle: 0.2 s, to: good }`);
    expect(ran(small('190 d', body, '1 d')).counts.good).toBe(190 * 24 * 60);
  });
});
