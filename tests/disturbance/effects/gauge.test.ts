import { describe, expect, it } from 'vitest';
import { Controls } from '../../../src/line/controls.ts';
import { gaugedCell } from '../../line/small-line.ts';
import { disturbed, expectEach, readings, runFor } from '../disturbed-line.ts';

describe('a disturbed gauge', () => {
  it('reads off by so much while it lasts', () => {
    // Read at 11, 21, ..., 91.
    const knocked =
      '  knocked: { disturbs: gauge, station: gauging, feature: rim, bias: 0.05 mm, at: 25 s, for: 30 s }';
    expect(readings(knocked, 91)).toEqual([0, 0, 0.05, 0.05, 0.05, 0, 0, 0, 0]);
  });

  it('scales the deviates of its repeatability', () => {
    const noisy = gaugedCell({ reading: 'repeatability: 0.02 mm' });
    const calm = readings('', 201, noisy);
    const seen = readings(
      '  worn: { disturbs: gauge, station: gauging, spread: 400 %, at: 0 s, for: 1 h }',
      201,
      noisy,
    );
    expectEach(
      seen,
      calm.map((reading) => 4 * reading),
    );
    expect(Math.max(...calm)).toBeGreaterThan(0.01);
  });

  it('is put right by a fix there', () => {
    const seen: number[] = [];
    const body = disturbed(
      gaugedCell(),
      '  knocked: { disturbs: gauge, station: gauging, bias: 1 mm, at: 0 s, for: 1 h }',
    );
    const line = runFor(35, body, ({ gauges }) =>
      gauges.get('gauging')!.readingListeners.push((_feature, reading) => seen.push(reading - 100)),
    );
    new Controls(line).fix('gauging');
    line.calendar.run(61);
    expect(seen).toEqual([1, 1, 1, 0, 0, 0]);
  });

  it('tells of a lot what decided about it, although the disturbance came meanwhile', () => {
    // Lots of 2, begun at 20, 40, ... and told 15 s later. Off from 25 s: the lot begun at 20 was judged right.
    const lots = gaugedCell({
      inspection: 'acceptance: { lot: 2, aql: 10 %, rejected: scrap }',
      rim: 'tolerance: 0.5 mm',
    }).replace('cycle: 1 s', 'cycle: 15 s');
    const off: boolean[] = [];
    const body = disturbed(
      lots,
      '  knocked: { disturbs: gauge, station: gauging, bias: 1 mm, at: 25 s, for: 30 s }',
    );
    const { tally } = runFor(100, body, ({ gauges }) =>
      gauges.get('gauging')!.judgementListeners.push((is) => off.push(is)),
    );
    // The one begun at 40 was judged wrong, although told at 55 or later.
    expect(tally).toMatchObject({ lotsAccepted: 3, lotsRejected: 1 });
    const each = off.length / 4;
    expect(off).toEqual([false, true, false, false].flatMap((is) => Array<boolean>(each).fill(is)));
  });
});
