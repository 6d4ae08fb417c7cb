import { describe, expect, it } from 'vitest';
import { Controls } from '../../../src/line/controls.ts';
import { blanks, ran, small } from '../../line/small-line.ts';
import { disturbed, expectEach, leaves, oneStation, runFor } from '../disturbed-line.ts';

describe('a disturbed speed', () => {
  it('of 50 % halves the output of a line of constant times', () => {
    const tired = '  tired: { disturbs: speed, station: only, to: 50 %, at: 0 s, for: 1 h }';
    expect(ran(small('1000 s', oneStation())).counts.good).toBe(100);
    expect(ran(small('1000 s', disturbed(oneStation(), tired))).counts.good).toBe(50);
  });

  it('holds from the next cycle on, while it lasts', () => {
    const tired = '  tired: { disturbs: speed, station: only, to: 50 %, at: 15 s, for: 30 s }';
    // Cycles begun at 20 and 40 take 20 s.
    expect(leaves(disturbed(oneStation(), tired), 90)).toEqual([10, 20, 40, 60, 70, 80, 90]);
  });

  it('falls over its ramp, and each cycle takes what the speed at its beginning makes of it', () => {
    const tired = '  tired: { disturbs: speed, station: only, to: 50 %, ramp: 100 s, at: 0 s, for: 1 h }';
    const expected = [0];
    while (expected.length < 6) {
      const begun = expected.at(-1)!;
      expected.push(begun + 10 / (1 - 0.5 * Math.min(1, begun / 100)));
    }
    const seen = leaves(disturbed(oneStation(), tired), 60).slice(0, 5);
    expectEach(seen, expected.slice(1));
  });

  it("multiplies with the station's own, and with another disturbance", () => {
    const both = `  one: { disturbs: speed, station: only, to: 50 %, at: 0 s, for: 1 h }
  other: { disturbs: speed, station: only, to: 40 %, at: 0 s, for: 1 h }`;
    // 10 s / (0.5 x 0.5 x 0.4).
    expect(leaves(disturbed(oneStation('speed: 50 %'), both), 250)).toEqual([100, 200]);
  });

  it('of arrivals lets more of them come', () => {
    const arriving = blanks(
      '  door: { does: arrive, every: 10 s, when-full: lost, to: desk }\n  desk: { does: work, buffer: 5, cycle: 1 s, to: good }\n',
    ).replace(/stock:\n.*\n/, '');
    const rush = '  rush: { disturbs: speed, station: door, to: 200 %, at: 0 s, for: 1 h }';
    expect(ran(small('101 s', arriving)).counts.good).toBe(10);
    expect(ran(small('101 s', disturbed(arriving, rush))).counts.good).toBe(20);
  });

  it('is put right by a fix there', () => {
    const tired = '  tired: { disturbs: speed, station: only, to: 50 %, at: 0 s, for: 1 h }';
    const line = runFor(30, disturbed(oneStation(), tired));
    new Controls(line).fix('only');
    line.calendar.run(60);
    // 20, 40, then 50 and 60.
    expect(line.tally.good).toBe(4);
  });
});
