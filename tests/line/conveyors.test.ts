import { describe, expect, it } from 'vitest';
import { blanks, ran, seconds, small } from './small-line.ts';

const belt = (first: string, buffer: string, second: string) =>
  blanks(`  a: { does: work, takes: blank, cycle: ${first}, to: b }
  b: { does: work, buffer: { ${buffer} }, cycle: ${second}, to: good }`);

describe('a conveyor', () => {
  it('gives a part on only after its transit, whether the station waits or not', () => {
    // Parts enter at 10, 20, 30 and come to b at 35, 45, 55.
    const outcome = ran(small('46 s', belt('10 s', 'places: 3, transit: 25 s', '1 s')));
    expect(outcome.counts.good).toBe(2);
    expect(seconds(outcome, 'b', 46)).toEqual({ starved: 44, working: 2 });
    expect(seconds(outcome, 'a', 46)).toEqual({ working: 46 });
    expect(outcome.measures.lead_time_s).toBeCloseTo(36, 9);
  });

  it('carries as many parts as it has places and blocks the station before when it is full', () => {
    // With two places: parts enter at 10 and 20, that of 30 waits until the first is taken off at 35.
    const outcome = ran(small('40 s', belt('10 s', 'places: 2, transit: 25 s', '1 s')));
    expect(seconds(outcome, 'a', 40)).toEqual({ working: 35, blocked: 5 });
  });

  it('lets parts queue at its end while the station is busy', () => {
    // Parts enter at 1 and 2; that of 3 when the first is taken off at 6, that of 7 at 16. b works from 6 on without
    // a pause, for the second part has been at the end since 7.
    const outcome = ran(small('26 s', belt('1 s', 'places: 2, transit: 5 s', '10 s')));
    expect(outcome.counts.good).toBe(2);
    expect(seconds(outcome, 'a', 26)).toEqual({ working: 3 + 1 + 1, blocked: 3 + 9 + 9 });
    expect(seconds(outcome, 'b', 26)).toEqual({ starved: 6, working: 20 });
  });

  it('takes parts on no closer than its spacing', () => {
    // Of each sheet parts enter at 10, 14 and 18, then at 28, 32 and 36; they come to trimming at 30, 34, 38, ...
    const body = `
stock:
  sheet: { unlimited: true }
parts:
  tray: { features: { rim: { nominal: 100 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 3, cycle: 10 s, to: trimming }
  trimming: { does: trim, buffer: { places: 6, transit: 20 s, spacing: 4 s }, cycle: 1 s, to: good }`;
    const outcome = ran(small('39 s', body));
    expect(seconds(outcome, 'forming', 39)).toEqual({ working: 23, blocked: 16 });
    expect(seconds(outcome, 'trimming', 39)).toEqual({ starved: 36, working: 3 });
    expect(outcome.counts.good).toBe(3);
  });

  it('gathers a batch at its end', () => {
    // Parts come to b at 6, 7 and 8: the batch of two starts at 7, the next at 10, when its parts have long been there.
    const body = blanks(`  a: { does: work, takes: blank, cycle: 1 s, to: b }
  b: { does: work, batch: 2, buffer: { places: 5, transit: 5 s }, cycle: 3 s, to: good }`);
    const outcome = ran(small('13 s', body));
    expect(outcome.counts.good).toBe(4);
    expect(seconds(outcome, 'b', 13)).toEqual({ starved: 7, working: 6 });
  });
});
