import { describe, expect, it } from 'vitest';
import { blanks, gaugedCell, ran, seconds, small } from '../line/small-line.ts';

/** A part every 10 s from 10 s on, washed for 4 s, rinsed for 2 s where it is, and packed for 3 s. */
const line = (
  skips: string,
  { wash = 'buffer: 9, cycle: 4 s', pack = '3 s', rinse = false } = {},
) => `${blanks(`
  feed: { does: work, takes: blank, cycle: 10 s, to: wash }
  wash: { does: work, ${wash}, to: ${rinse ? 'rinse' : 'pack'} }
${rinse ? '  rinse: { does: work, buffer: 9, cycle: 2 s, to: pack }' : ''}
  pack: { does: work, buffer: 9, cycle: ${pack}, to: good }`)}
policies:
  carry on: []
  past: [${skips}]`;
const skip = (later: 'yes' | 'no', from: number, to: number, station = 'wash') =>
  `{ do: skip, station: ${station}, later: ${later}, when: { from: ${from} s, to: ${to} s } }`;

/** Expects good parts to leave at these times, s, and no others up to the last. */
function expectGood(text: string, times: readonly number[]): void {
  for (const [i, time] of times.entries()) {
    expect(ran(small(`${time} s`, text), 'past').counts.good).toBe(i + 1);
    expect(ran(small(`${time - 0.5} s`, text), 'past').counts.good).toBe(i);
  }
}

describe('skip', () => {
  it('lets parts go past, never to be done', () => {
    // Those of 20 and 30 s go straight to packing.
    const text = line(skip('no', 15, 35));
    expectGood(text, [17, 23, 33, 47, 57]);
    const outcome = ran(small('57 s', text), 'past');
    expect(seconds(outcome, 'wash', 57).working).toBe(12);
    expect(outcome.did).toEqual({ skipped_wash_parts: 2 });
  });

  it('or to be done in the end, when it is over', () => {
    // Packed at 23 and 33 s, they are kept until 35 s, washed until 39 and 43 s and leave; the next, of 40 s, waits for that.
    const text = line(skip('yes', 15, 35));
    expectGood(text, [17, 39, 43, 50]);
    const outcome = ran(small('50 s', text), 'past');
    expect(seconds(outcome, 'pack', 50).working).toBe(12);
    expect(seconds(outcome, 'wash', 50).working).toBe(16);
    expect(outcome.did).toEqual({ skipped_wash_parts: 2, made_up_wash_parts: 2 });
  });

  it('sends through at once what comes to leave when it is over', () => {
    // Packed from 20 to 50 s, behind the first, from 14 to 44 s: until 74 s; then washed.
    expectGood(line(skip('yes', 15, 25), { pack: '30 s' }), [44, 78]);
  });

  it('sends them through as there is room', () => {
    // Three are packed by 43 s and kept until 45 s. With no place in front: washed to 49, then 53 and, before that of 50 s,
    // which waits behind them, 57 s; that one is washed until 61 s.
    const text = line(skip('yes', 15, 45), { wash: 'buffer: 0, cycle: 4 s' });
    expectGood(text, [17, 49, 53, 57, 64]);
    expect(seconds(ran(small('64 s', text), 'past'), 'feed', 64).blocked).toBe(7);
  });

  it('lets what waits for room go past at once, and holds it up no longer than the station behind', () => {
    // The first is washed for long; the second waits from 20 to 25 s.
    const text = line(skip('no', 25, 99), { wash: 'buffer: 0, cycle: 99 s' });
    expectGood(text, [28, 38, 48]);
    expect(seconds(ran(small('48 s', text), 'past'), 'feed', 48)).toEqual({ working: 43, blocked: 5 });
  });

  it('at two stations does first the one and then the other', () => {
    // That of 20 s is packed until 23 s, washed from 25 to 29 s and rinsed until 31 s.
    const both = `${skip('yes', 15, 25)}, ${skip('yes', 15, 25, 'rinse')}`;
    expectGood(line(both, { rinse: true }), [19, 31, 39]);
  });

  it('of both kinds goes by the later that is in force', () => {
    // That of 20 s is kept from 23 s on and washed until 39 s; that of 30 s is never washed.
    expectGood(line(`${skip('yes', 15, 35)}, ${skip('no', 25, 35)}`), [17, 33, 39, 47]);
  });

  it('leaves a part without a mark that went past marking', () => {
    const text = `
stock:
  sheet: { unlimited: true }
parts: { tray: { features: { rim: { nominal: 10 mm, made-at: forming } } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: marking }
  marking: { does: mark, buffer: 9, cycle: 2 s, takes-hold: 100 %, to: gauging }
  gauging:
    does: gauge
    buffer: 9
    cycle: 1 s
    every: 1
    measures: { rim: { repeatability: 0 mm } }
    off-limits: pass
    reader: { reads: 100 %, unread: pass }
    to: good
policies:
  past: [${skip('yes', 15, 35, 'marking')}]`;
    const outcome = ran(small('60 s', text), 'past');
    // Two are unread at the gauge and marked afterwards, at 37 and 39 s; those of 10, 40 and 50 s are as ever.
    expect(outcome.counts).toMatchObject({ unread: 2, good: 5 });
    expect(seconds(outcome, 'marking', 60).working).toBe(10);
    expect(seconds(outcome, 'gauging', 60).working).toBe(5);
  });

  it('takes no readings of what goes past a gauge, unless later', () => {
    const readings = (later: 'yes' | 'no') => {
      const text = `${gaugedCell({ rim: 'tolerance: 0.1 mm', offLimits: 'scrap' })}
disturbances: { hot: { disturbs: setting, setting: heater, by: 7 °C, at: 0 s, for: 1 h } }
policies: { past: [${skip(later, 15, 35, 'gauging')}] }`;
      const { good, scrapped } = ran(small('45 s', text), 'past').counts;
      return { good, scrapped };
    };
    // All are too large: those of 20 and 30 s are not seen to be, or are at 36 and 37 s.
    expect(readings('no')).toEqual({ good: 2, scrapped: 2 });
    expect(readings('yes')).toEqual({ good: 0, scrapped: 4 });
  });
});
