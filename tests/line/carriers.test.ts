import { describe, expect, it } from 'vitest';
import { blanks, ran, seconds, small } from './small-line.ts';

const line = (carriers: string, last = '8 s', places: number | string = 'unlimited') =>
  `${blanks(`  s1: { does: work, takes: blank, cycle: 1 s, to: s2 }
  s2: { does: work, buffer: unlimited, cycle: 1 s, to: s3 }
  s3: { does: work, buffer: ${places}, cycle: ${last}, to: good }`)}
carriers:
  pallet: { ${carriers} }`;

describe('carriers', () => {
  it('keep the line closed: a new part is begun when one is back', () => {
    // Round takes 1 + 1 + 6 and 2 s for the way back: with one carrier s1 begins at 0, 10, 20 and 30.
    const outcome = ran(small('30 s', line('number: 1, from: s1, return: 2 s', '6 s')));
    expect(outcome.counts).toMatchObject({ started: 4, good: 3 });
    expect(seconds(outcome, 's1', 30)).toEqual({ working: 3, starved: 27 });
    expect(outcome.measures.work_in_progress_parts).toBeCloseTo(0.8, 9);
  });

  it('limit the parts between their two stations to their number', () => {
    // With two: s1 begins at 0 and 1; the carriers are back at 10 and, for s3 is the bottleneck, every 6 s then: 16, 22, 28.
    const outcome = ran(small('30 s', line('number: 2, from: s1, return: 2 s', '6 s')));
    expect(outcome.counts).toMatchObject({ started: 6, good: 4 });
  });

  it('are given back when the part leaves the line, or the station that is named', () => {
    // Out of the line: rounds of 10 s. Behind s2: rounds of 2 s.
    expect(ran(small('20 s', line('number: 1, from: s1'))).counts.started).toBe(3);
    expect(ran(small('20 s', line('number: 1, from: s1, to: s3'))).counts.started).toBe(3);
    expect(ran(small('20 s', line('number: 1, from: s1, to: s2'))).counts.started).toBe(11);
  });

  it('are kept by a part that has not yet been able to leave', () => {
    // s3 works 2-10. s1 begins at 0 and 2; the second part is done at s2 at 4 and leaves it at 10.
    const outcome = ran(small('10 s', line('number: 1, from: s1, to: s2', '8 s', 0)));
    expect(outcome.counts.started).toBe(3);
    expect(seconds(outcome, 's2', 10)).toEqual({ starved: 2, working: 2, blocked: 6 });
  });

  const gauged = (offLimits: string, carriers: string) => `
stock:
  sheet: { unlimited: true }
parts:
  tray: { features: { rim: { nominal: 100 mm, tolerance: 1 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 2, cycle: 2 s, to: gauging }
  gauging:
    does: gauge
    buffer: unlimited
    cycle: 1 s
    every: 1
    measures: { rim: { bias: 10 mm, repeatability: 0 mm } }
    off-limits: ${offLimits}
    to: good
  bench: { does: rework, buffer: unlimited, cycle: 5 s, limit: 1, corrects: {}, to: gauging }
carriers:
  pallet: { from: forming, ${carriers} }
policies:
  carry on: [{ do: inspect, at: gauging, every: 1, off-limits: ${offLimits} }]
  bench: [{ do: inspect, at: gauging, every: 1, off-limits: bench }]`;

  it('come back from parts that are scrapped, wherever they are to be given back', () => {
    // A sheet needs two: begun at 0, the parts are scrapped at 3 and 4; begun at 4, at 7 and 8.
    for (const to of ['', ', to: gauging']) {
      const outcome = ran(small('8 s', gauged('scrap', `number: 2${to}`)));
      expect(outcome.counts).toMatchObject({ started: 6, scrapped: 4 });
      expect(seconds(outcome, 'forming', 8)).toEqual({ working: 4, starved: 4 });
    }
  });

  it('wait until there are enough for a whole sheet', () => {
    // With three, the one left over and the one back at 3 take the next sheet, those back at 4 and 6 the third.
    const outcome = ran(small('6 s', gauged('scrap', 'number: 3')));
    expect(outcome.counts.started).toBe(6);
    expect(seconds(outcome, 'forming', 6)).toEqual({ working: 2 + 2, starved: 1 + 1 });
  });

  it('stay with a part that goes to rework', () => {
    // Both parts go to the bench, at 3 and 4, come back at 8 and 13, and are scrapped at 9 and 14.
    const outcome = ran(small('14 s', gauged('scrap', 'number: 2, to: gauging')), 'bench');
    expect(outcome.counts).toMatchObject({ started: 4, scrapped: 2, reworked: 2 });
  });

  it('may be taken in the middle of the line, where a part waits in the buffer for one', () => {
    // One carrier between s2 and s3: s2 begins at 1, and again when s3 is done, at 10 and 19. s1 never waits.
    const outcome = ran(small('20 s', line('number: 1, from: s2, to: s3')));
    expect(outcome.counts).toMatchObject({ started: 21, good: 2 });
    expect(seconds(outcome, 's1', 20)).toEqual({ working: 20 });
    expect(seconds(outcome, 's2', 20)).toEqual({ starved: 1 + 8 + 8, working: 3 });
  });

  it('hold up the station before, where there is no place for parts that wait for one', () => {
    // s2's two machines have no place in front. The first carrier is back at 6 and goes to the second machine, while the
    // first still works on the part of 2, to 7.
    const body = `${blanks(`  s1: { does: work, takes: blank, cycle: 1 s, to: s2 }
  s2: { does: work, machines: 2, buffer: 0, cycle: 5 s, to: good }`)}
carriers:
  pallet: { number: 2, from: s2 }`;
    const outcome = ran(small('12 s', body));
    // s2 1: 1-6 and 6-11; s2 2: 2-7 and 7-12. s1 is blocked 3-6, works 6-7, is blocked no longer than that instant,
    // works 7-8, is blocked to 11, works 11-12.
    expect(seconds(outcome, 's1', 12)).toEqual({ working: 3 + 1 + 1 + 1, blocked: 3 + 3 });
    expect(outcome.counts.good).toBe(4);
  });

  it('that come back while only one of two machines waits go to that one', () => {
    const body = `${blanks(`  s1: { does: work, takes: blank, cycle: 1 s, to: s2 }
  s2: { does: work, machines: 2, buffer: 0, cycle: 3 s, to: s3 }
  s3: { does: work, buffer: unlimited, cycle: 1 s, to: good }`)}
carriers:
  pallet: { number: 2, from: s2, to: s3, return: 1 s }`;
    // s2 1: 1-4, s2 2: 2-5. s3: 4-5, 5-6. Carriers are back at 6 and 7. The part of 3 blocks s1 to 6, that of 7 to 7.
    // s2 1: 6-9, s2 2: 7-10, and so on every 5 s.
    const outcome = ran(small('11 s', body));
    expect(seconds(outcome, 's1', 11)).toEqual({ working: 3 + 1 + 1, blocked: 3 + 3 });
    expect(seconds(outcome, 's2', 11)).toEqual({ starved: (1 + 2 + 2 + 2 + 2 + 1) / 2, working: 6 });
    expect(outcome.counts.good).toBe(4);
  });

  it('are taken by a batch for each of its parts', () => {
    // Two parts a batch and three carriers: batches at 2 and, when the two carriers are back, 5.
    const body = `${blanks(`  s1: { does: work, takes: blank, cycle: 1 s, to: s2 }
  s2: { does: work, batch: 2, machines: 2, buffer: 9, cycle: 3 s, to: good }`)}
carriers:
  pallet: { number: 3, from: s2 }`;
    expect(ran(small('8 s', body)).counts.good).toBe(4);
  });
});

describe('a tool that the machines of one station share', () => {
  it('is taken and given back there', () => {
    // Two of three machines can work at once: two parts every 10 s.
    const body = `${blanks('  a: { does: work, machines: 3, takes: blank, cycle: 10 s, to: good }')}
carriers: { tool: { number: 2, from: a, to: a } }`;
    const outcome = ran(small('1000 s', body));
    expect(outcome.counts.good).toBe(200);
    expect(outcome.stateShares.a!.working).toBeCloseTo(2 / 3, 9);
  });
});
