import { describe, expect, it } from 'vitest';
import { blanks, ran, seconds, small } from './small-line.ts';

describe('two machines at one station', () => {
  const pair = (places: number) =>
    blanks(`  a: { does: work, takes: blank, cycle: 1 s, to: b }
  b: { does: work, machines: 2, buffer: ${places}, cycle: 4 s, to: good }`);

  it('draw from one buffer, and the states of the station are the mean over both', () => {
    // b 1 works 1-5 and 5-9, b 2 works 2-6 and 6-9. The part of 3 waits in the buffer; the one of 4 blocks a to 5.
    // The part of 6 enters the buffer that b 2 has just emptied; the one of 7 blocks a to 9.
    const outcome = ran(small('9 s', pair(1)));
    expect(outcome.counts.good).toBe(3);
    expect(seconds(outcome, 'a', 9)).toEqual({ working: 6, blocked: 3 });
    expect(seconds(outcome, 'b', 9)).toEqual({ working: (8 + 7) / 2, starved: (1 + 2) / 2 });
  });

  it('are handed a part without a place between while either can start on it', () => {
    // b 1 works 1-5 and 5-9, b 2 works 2-6 and 6-9. a is blocked 3-5 and 7-9.
    const outcome = ran(small('9 s', pair(0)));
    expect(outcome.counts.good).toBe(3);
    expect(seconds(outcome, 'a', 9)).toEqual({ working: 5, blocked: 4 });
  });

  it('break down each by its own work', () => {
    // Parts come at 3, 6, 9, ... and the first free machine takes them. b 1 works 3-5 and 6-8, is worn at 9 and down
    // to 19, works 19-23. b 2 works 12-14 and 15-17, is worn at 18. The part of 21 waits for b 1 within the instant.
    const body = blanks(`  a: { does: work, takes: blank, cycle: 3 s, to: b }
  b:
    does: work
    machines: 2
    buffer: 1
    cycle: 2 s
    breakdowns: { wear: { every: 4 s, counted: working, repair: 10 s, cycle: resumes } }
    to: good`);
    const outcome = ran(small('23 s', body));
    expect(outcome.counts.good).toBe(6);
    expect(seconds(outcome, 'b', 23)).toEqual({
      starved: (5 + 14) / 2,
      working: (8 + 4) / 2,
      down: (10 + 5) / 2,
    });
  });

  it('are both asked when mates come and there is no place between', () => {
    // Mates: one at hand, then one at 4 and, ordered when that is taken, one at 7. assembly 1 works 1-11, the second
    // part waits 2-4 for a mate and goes to assembly 2, the third waits 5-11 for a machine.
    const body = `
stock:
  sheet: { unlimited: true }
  frame: { on-hand: 1, reorder-at: 0, order: 1, lead-time: 3 s, features: { groove: { nominal: 101 mm } } }
parts:
  tray: { features: { rim: { nominal: 100 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 1 s, to: assembly }
  assembly:
    does: assemble
    machines: 2
    buffer: 0
    takes: [frame]
    cycle: 10 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0 mm, most: 2 mm }]
    misfit: scrap
    to: good`;
    const outcome = ran(small('12 s', body));
    expect(seconds(outcome, 'forming', 12)).toEqual({ working: 4, blocked: 8 });
    expect(seconds(outcome, 'assembly', 12)).toEqual({ starved: (1 + 4) / 2, working: (11 + 8) / 2 });
  });

  it('each know what is on them: one gauges while parts pass the other', () => {
    // Of four parts at 10 the second and the fourth are gauged, 10-13, one at each machine, and scrapped for the bias;
    // the first and the third pass at once.
    const body = `
stock:
  sheet: { unlimited: true }
parts:
  tray: { features: { rim: { nominal: 100 mm, tolerance: 1 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 4, cycle: 10 s, to: gauging }
  gauging:
    does: gauge
    machines: 2
    buffer: 4
    cycle: 3 s
    every: 2
    measures: { rim: { bias: 5 mm, repeatability: 0 mm } }
    off-limits: scrap
    to: good`;
    expect(ran(small('10 s', body)).counts).toMatchObject({ good: 2, scrapped: 0 });
    const outcome = ran(small('13 s', body));
    expect(outcome.counts).toMatchObject({ good: 2, scrapped: 2 });
    expect(seconds(outcome, 'gauging', 13)).toEqual({ starved: 10, working: 3 });
  });
});

describe('a speed loss', () => {
  const slow = (more = '') =>
    blanks(`  only: { does: work, takes: blank, cycle: 8 s, speed: 80 %, to: good${more} }`);

  it('divides the cycle time', () => {
    const { counts, measures } = ran(small('100 s', slow()));
    expect(counts.good).toBe(10);
    expect(measures.lead_time_s).toBeCloseTo(10, 9);
  });

  it('lets a breakdown by working time come after so much time at work, not after so many pieces', () => {
    // Down 25-30, after 2.5 parts of 10 s: parts leave at 10, 20, 35 and 45.
    const stop = ', breakdowns: { stop: { every: 25 s, counted: working, repair: 5 s, cycle: resumes } }';
    const outcome = ran(small('45 s', slow(stop)));
    expect(outcome.counts.good).toBe(4);
    expect(seconds(outcome, 'only', 45)).toEqual({ working: 40, down: 5 });
  });
});
