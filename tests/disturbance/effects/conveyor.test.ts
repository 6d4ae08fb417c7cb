import { describe, expect, it } from 'vitest';
import { blanks } from '../../line/small-line.ts';
import { disturbed, leaves } from '../disturbed-line.ts';

/** A part every 10 s onto a belt of 20 s, and 1 s at its end. */
const belt = (spacing = '0 s') =>
  blanks(`  first: { does: work, takes: blank, cycle: 10 s, to: second }
  second: { does: work, buffer: { places: 4, transit: 20 s, spacing: ${spacing} }, cycle: 1 s, to: good }
`);
const hit = (keys: string, body = belt()) =>
  disturbed(body, `  jam: { disturbs: conveyor, station: second, ${keys} }`);

describe('a disturbed conveyor', () => {
  it('stands with all parts on it', () => {
    expect(leaves(belt(), 72)).toEqual([31, 41, 51, 61, 71]);
    // Stands from 25 to 40: that entered at 10 has 5 s to go, that of 20 has 15 s, those of 30 and 40 the whole way.
    expect(leaves(hit('to: 0 %, at: 25 s, for: 15 s'), 72)).toEqual([46, 56, 61, 62, 71]);
  });

  it('moves slower, and as fast as ever when it is over', () => {
    // From 20 to 40 s at half speed: that of 10 has 10 s to go, so it arrives at 40; that of 20 has gone 10 s of 20 by
    // then, that of 30 has gone 5 s, that of 40 none.
    expect(leaves(hit('to: 50 %, at: 20 s, for: 20 s'), 72)).toEqual([41, 51, 56, 61, 71]);
  });

  it('lets nothing enter within its spacing while it stands', () => {
    // Spacing of 8 s. Entered at 10, 20; stands from 25 to 45, when 5 of 8 s are clear: the part of 30 enters at 48. The
    // next cycle, begun at 48, ends at 58. That of 10 arrives at 50, that of 20 at 60, that of 48 at 68.
    expect(leaves(hit('to: 0 %, at: 25 s, for: 20 s', belt('5 s')), 72)).toEqual([51, 61, 66, 71]);
    expect(leaves(hit('to: 0 %, at: 25 s, for: 20 s', belt('6 s')), 72)).toEqual([51, 61, 67]);
  });

  it('slows down over its ramp by its mean speed', () => {
    // Falls evenly from 1 to 0 between 10 and 50 s: by t seconds a part of 10 has gone t - t^2/80, at most 20 s, at its end.
    const slow = leaves(hit('to: 0 %, ramp: 40 s, at: 10 s, for: 80 s'), 140);
    expect(slow[0]).toBeGreaterThan(49);
    expect(slow[0]).toBeLessThan(92);
    // That of 20 has gone 20 - (10 - 100/80) = 11.25 s when the belt stands, and goes on at 90.
    expect(slow[1]).toBeCloseTo(90 + 8.75 + 1, 6);
  });
});
