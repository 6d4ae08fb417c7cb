import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { idealLine } from '../../src/line/ideal.ts';
import { BORN } from '../../src/line/part-table.ts';
import { gaugedCell, ran, seconds, small } from './small-line.ts';

// Lots of 20 at AQL 1 %: letter C leads down to E, so 13 of them are gauged and none may be off limits, on normal inspection;
// on tightened inspection the arrow leads to F: all 20.
const LOT = 20;
const SAMPLE = 13;

interface Given {
  /** Size of every part; within 0.1 mm of 100 mm it is good. */
  readonly size?: number;
  readonly ownSd?: number;
  readonly rejected?: string;
  readonly offLimits?: string;
  readonly more?: string;
}

const cell = ({ size = 100, ownSd = 0, rejected = 'scrap', offLimits = 'pass', more = '' }: Given = {}) =>
  gaugedCell({
    rim: `tolerance: 0.1 mm, mould: ${size} mm, own-sd: ${ownSd} mm`,
    reading: 'repeatability: 0 mm, takes: 2 s',
    inspection: `acceptance: { lot: ${LOT}, aql: 1 %, rejected: ${rejected} }`,
    buffer: 30,
    offLimits,
  }) + more;

const bench = `  bench: { does: rework, buffer: unlimited, cycle: 1 s, limit: 1, corrects: { rim: { removes: 100 %, own-sd: 0 mm } }, to: gauging }\n`;

describe('a station that inspects lots', () => {
  it('waits for a lot, gauges a sample of it, and passes all of it on', () => {
    // The last part of the first lot comes at 200; the cycle takes 1 s and 13 readings of 2 s.
    const outcome = ran(small('230 s', cell()));
    expect(outcome.counts).toMatchObject({ good: LOT, scrapped: 0, lotsAccepted: 1, lotsRejected: 0 });
    expect(seconds(outcome, 'gauging', 230)).toEqual({ starved: 203, working: 1 + 2 * SAMPLE });
  });

  it('scraps the whole of a lot that is not accepted', () => {
    const outcome = ran(small('230 s', cell({ size: 101 })));
    expect(outcome.counts).toMatchObject({ good: 0, scrapped: LOT, lotsAccepted: 0, lotsRejected: 1 });
    expect(seconds(outcome, 'gauging', 230)).toMatchObject({ working: 1 + 2 * SAMPLE });
  });

  it('screens the rest of a lot that is not accepted, in the time of its readings', () => {
    const outcome = ran(small('245 s', cell({ size: 101, rejected: 'screen', offLimits: 'scrap' })));
    expect(outcome.counts).toMatchObject({ good: 0, scrapped: LOT, lotsRejected: 1 });
    expect(seconds(outcome, 'gauging', 245)).toMatchObject({ working: 1 + 2 * LOT });
  });

  it('sends all parts of a lot that is not accepted to a rework station, from where they come back', () => {
    // Judged at 227, they come back from 228 on, one a second: by 243 16 of them and the parts of 210 to 240 make a lot,
    // which is rejected, too, unless all of the latter stay out of the sample (one in 138). A second visit to the
    // bench is one too many for the 16; the 4 go there.
    const outcome = ran(small('300 s', cell({ size: 101, rejected: 'bench', more: bench })));
    expect(outcome.counts).toMatchObject({ good: 0, scrapped: 16, reworked: LOT + 4, lotsRejected: 2 });
  });

  it('sends each part of a lot that is not accepted away once, also one that is off limits itself', () => {
    // 20 bad parts, judged at 227: all of them have their one visit to the bench, 20 s in all, and leave as good.
    const toGood = bench.replace('to: gauging', 'to: good');
    const body = cell({ size: 101, rejected: 'bench', offLimits: 'bench', more: toGood });
    expect(ran(small('300 s', body)).counts).toMatchObject({ good: LOT, scrapped: 0, reworked: LOT });
  });

  it('counts nothing as reworked or marked anew that is scrapped with its lot', () => {
    const scrapped = cell({ size: 101, rejected: 'scrap', offLimits: 'bench', more: bench });
    expect(ran(small('230 s', scrapped)).counts).toMatchObject({ scrapped: LOT, reworked: 0 });
    const marking = `  marking: { does: mark, buffer: unlimited, cycle: 0 s, takes-hold: 0 %, to: gauging }\n`;
    const unread = cell({ size: 101, rejected: 'scrap', more: marking })
      .replace('to: gauging', 'to: marking')
      .replace(
        'off-limits: pass',
        'off-limits: pass\n    reader: { reads: 100 %, unread: { re-mark: marking } }',
      );
    const { counts } = ran(small('230 s', unread));
    expect(counts).toMatchObject({ scrapped: LOT, unread: SAMPLE, reMarked: 0 });
  });

  it('is tightened after two lots that are not accepted: the sample is larger', () => {
    // Lots are complete at 200, 400 and 600. The third has a sample of 20.
    const outcome = ran(small('690 s', cell({ size: 101 })));
    expect(outcome.counts.lotsRejected).toBe(3);
    expect(seconds(outcome, 'gauging', 690)).toMatchObject({ working: 2 * (1 + 2 * SAMPLE) + 1 + 2 * LOT });
  });

  it('gauges a random sample, of parts from anywhere in the lot', () => {
    const line = prepare(small('1 h', cell()), 'carry on', 1);
    const places: number[] = [];
    line.gauges.get('gauging')!.readingListeners.push((_feature, _reading, row) => {
      places.push((line.parts.get(row!, BORN) / 10) % LOT);
    });
    const lots = 200;
    line.calendar.run(lots * 200 + 100);
    expect(places.length).toBe(lots * SAMPLE);
    // Each place is in a sample with chance 13/20: of 200 lots 130, with a standard deviation of 6.7; four and a half of these.
    for (let place = 0; place < LOT; place++) {
      const times = places.filter((one) => Math.round(one) === place).length;
      expect(Math.abs(times - (lots * SAMPLE) / LOT), `place ${place}`).toBeLessThan(30);
    }
  });

  it('tells policies of readings when they are over, and of each part by itself', () => {
    const line = prepare(small('1 h', cell({ size: 101 })), 'carry on', 1);
    const told: [number, boolean][] = [];
    line.gauges.get('gauging')!.judgementListeners.push((off) => told.push([line.calendar.now, off]));
    line.calendar.run(230);
    expect(told).toEqual(Array(SAMPLE).fill([227, true]));
  });

  it('stands still when all carriers lie in incomplete lots, and says so', () => {
    // 20 carriers on two ways: neither station gets a lot of 20 before the other has a part.
    const second = `  second: { does: gauge, buffer: 30, cycle: 1 s, acceptance: { lot: ${LOT}, aql: 1 %, rejected: scrap }, measures: { rim: { repeatability: 0 mm } }, off-limits: pass, to: good }\n`;
    const split = 'to: { by: share, routes: { gauging: 50 %, second: 50 % } }';
    const body = `${cell({ more: second }).replace('to: gauging', split)}carriers: { pallet: { number: 20, from: forming } }\n`;
    expect(() => ran(small('3 h', body))).toThrow(/"gauging" waits for 20 parts and has \d+/);
  });

  it('could pass on what its sample takes time for', () => {
    const { stations } = idealLine(small('1 h', cell()));
    expect(stations.find(({ station }) => station === 'gauging')!.secondsPerPart).toBeCloseTo(
      (1 + 2 * SAMPLE) / LOT,
      12,
    );
  });

  it('sends what it finds off limits in an accepted lot where the station says', () => {
    // AQL 10 % of lots of 20: letter C, 5 of 20, one may be off limits. A quarter of the parts are, so that lots of both kinds come.
    const body = cell({ ownSd: 0.0869, offLimits: 'scrap' }).replace('aql: 1 %', 'aql: 10 %');
    const { counts } = ran(small('20 h', body));
    expect(counts.lotsAccepted).toBeGreaterThan(100);
    expect(counts.lotsRejected).toBeGreaterThan(100);
    // Beyond whole lots, at most one part an accepted lot is scrapped; in 3 of 5 there is one.
    const found = counts.scrapped - LOT * counts.lotsRejected;
    expect(found).toBeGreaterThan(0.3 * counts.lotsAccepted);
    expect(found).toBeLessThanOrEqual(counts.lotsAccepted);
  });
});
