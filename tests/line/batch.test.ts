import { describe, expect, it } from 'vitest';
import { blanks, ran, seconds, small } from './small-line.ts';

describe('a batch', () => {
  it('starts when all its parts are there, takes one cycle, and leaves together', () => {
    // b works 6-11, 12-17 and 18-23. Of each batch the parts were begun 11, 9 and 7 s before it leaves.
    const body = blanks(`  a: { does: work, takes: blank, cycle: 2 s, to: b }
  b: { does: work, batch: 3, buffer: 3, cycle: 5 s, to: good }`);
    const outcome = ran(small('23 s', body));
    expect(outcome.counts).toMatchObject({ started: 12, good: 9 });
    expect(seconds(outcome, 'a', 23)).toEqual({ working: 23 });
    expect(seconds(outcome, 'b', 23)).toEqual({ starved: 8, working: 15 });
    expect(outcome.measures.lead_time_s).toBeCloseTo(9, 9);
  });

  it('is passed on part by part, and the next is not begun before the last has left', () => {
    // b works 2-5, hands one part to c at 5 and the other at 9, works 9-12 and waits for c to 13. Its buffer holds
    // the parts of 3 and 4, the one of 5 blocks a to 9; then those of 9 (left from 5) and 10, the one of 11 blocks.
    const body = blanks(`  a: { does: work, takes: blank, cycle: 1 s, to: b }
  b: { does: work, batch: 2, buffer: 2, cycle: 3 s, to: c }
  c: { does: work, buffer: 0, cycle: 4 s, to: good }`);
    const outcome = ran(small('13 s', body));
    expect(outcome.counts.good).toBe(2);
    expect(seconds(outcome, 'a', 13)).toEqual({ working: 7, blocked: 6 });
    expect(seconds(outcome, 'b', 13)).toEqual({ starved: 2, working: 6, blocked: 5 });
    expect(seconds(outcome, 'c', 13)).toEqual({ starved: 5, working: 8 });
  });

  it('is scrapped as a whole', () => {
    // Stopped at 3 with the parts of 1 and 2 on it; they are gone when it goes on at 4.
    const body = `${blanks(`  a: { does: work, takes: blank, cycle: 1 s, to: b }
  b: { does: work, batch: 2, buffer: 2, cycle: 3 s, to: good }`)}
disturbances:
  stoppage: { disturbs: station, station: b, cycle: scraps, at: 3 s, for: 1 s }`;
    expect(ran(small('7 s', body)).counts).toMatchObject({ scrapped: 2, good: 2 });
  });
});
