import { describe, expect, it } from 'vitest';
import { ran, seconds, small } from './small-line.ts';

/** A machine that works without end and breaks down, always with a spare of its own. */
const machine = (name: string, every: number, more = '', count = 1) => `  ${name}:
    does: work
    takes: blank
    machines: ${count}
    cycle: 1000 s
    breakdowns:
      burnt: { every: ${every} s, counted: working, repair: 2 s, cycle: resumes, spare: element${more} }
    to: good`;

const body = (element: string, ...stations: string[]) => `
stock:
  blank: { unlimited: true }
  element: { ${element} }
stations:
${stations.join('\n')}`;

describe('a repair that needs a spare', () => {
  it('takes one piece, and waits for the delivery where there is none', () => {
    // Works 0-10, is repaired 10-12, which has the one piece ordered for 10 + 25. Works 12-22, waits 22-35, is repaired 35-37.
    const outcome = ran(small('37 s', body('on-hand: 1, up-to: 1, lead-time: 25 s', machine('only', 10))));
    expect(seconds(outcome, 'only', 37)).toEqual({ working: 20, down: 4, awaiting_spare: 13 });
    expect(outcome.stocks.element).toMatchObject({ fill_rate: 0.5, stock_outs: 1, orders: 2 });
  });

  it('is ordered for when it fails where what is waited for is owed, else when a piece is taken', () => {
    // Both fail at 10; one piece is there, ordered anew for 30. Owed, the other's is ordered at once, too.
    const two = (more: string) =>
      ran(
        small(
          '31 s',
          body(`on-hand: 1, up-to: 1, lead-time: 20 s${more}`, machine('a', 10), machine('b', 10)),
        ),
      );
    for (const outcome of [two(''), two(', when-short: backorders')])
      expect(seconds(outcome, 'b', 31)).toEqual({ working: 10, awaiting_spare: 20, down: 1 });
    // a works 12-22 and waits; the one piece that came at 30 has gone to b, the next was ordered at 30 or at 10 and 22.
    expect(two('').stocks.element!.orders).toBe(2);
    expect(two(', when-short: backorders').stocks.element!.orders).toBe(3);
  });

  it('never waits where the stock is unlimited', () => {
    const outcome = ran(small('36 s', body('unlimited: true', machine('only', 10))));
    expect(seconds(outcome, 'only', 36)).toEqual({ working: 30, down: 6 });
  });

  it('calls its crew only when the spare is there, which is put aside for it', () => {
    // Both fail at 10, before the fitter comes on at 20. The piece is put aside for a, and for b another comes at 15.
    // The fitter is with a 20-22, with b 22-24.
    const crew = `
crew:
  fitter: { number: 1, calendar: day }
calendars:
  day: { shifts: [{ days: [mon], begins: 20 s, lasts: 1 h }] }`;
    const call = ', crew: fitter';
    const outcome = ran(
      small(
        '24 s',
        body('on-hand: 1, up-to: 1, lead-time: 5 s', machine('a', 10, call), machine('b', 10, call)) + crew,
      ),
    );
    expect(seconds(outcome, 'a', 24)).toEqual({ working: 12, awaiting_technician: 10, down: 2 });
    expect(seconds(outcome, 'b', 24)).toEqual({
      ...{ working: 10, awaiting_spare: 5, awaiting_technician: 7, down: 2 },
    });
  });

  it('is served in turn, stations that take the same stock among them', () => {
    // late is listed first and fails at 14, early at 10: two pieces come at 40, 20 after the first was taken.
    const stations = [machine('late', 14), machine('early', 10), machine('first', 5)];
    const one = ran(small('27 s', body('on-hand: 1, up-to: 1, lead-time: 20 s', ...stations)));
    expect(seconds(one, 'early', 27)).toEqual({ working: 10, awaiting_spare: 15, down: 2 });
    expect(seconds(one, 'late', 27)).toEqual({ working: 14, awaiting_spare: 13 });
    // A station that came to wait at 4, after its only cycle, is before both.
    const eater = '  eater: { does: work, takes: element, cycle: 4 s, to: good }';
    const shared = ran(
      small('25 s', body('on-hand: 1, up-to: 1, lead-time: 25 s', machine('early', 10), eater)),
    );
    expect(seconds(shared, 'eater', 25)).toEqual({ working: 4, starved: 21 });
    expect(shared.counts.started).toBe(1 + 2);
    // One that came to wait after it is behind it.
    const behind = ran(
      small('26 s', body('on-hand: 1, up-to: 1, lead-time: 25 s', machine('early', 3), eater)),
    );
    expect(seconds(behind, 'eater', 26)).toEqual({ working: 4, starved: 22 });
    expect(seconds(behind, 'early', 26)).toEqual({ working: 3, awaiting_spare: 22, down: 1 });
  });

  it('of each of several machines at a station is its own', () => {
    // All three fail at 10; the two pieces repair the first two until 12.
    const outcome = ran(small('20 s', body('on-hand: 2', machine('bank', 10, '', 3))));
    expect(seconds(outcome, 'bank', 60)).toEqual({ working: 46, down: 4, awaiting_spare: 10 });
  });

  it('is down while another of its breakdowns is under repair', () => {
    const two = `  only:
    does: work
    takes: blank
    cycle: 1000 s
    breakdowns:
      burnt: { every: 10 s, counted: clock, repair: 2 s, cycle: resumes, spare: element }
      jam: { every: 15 s, counted: clock, repair: 5 s, cycle: resumes }
    to: good`;
    // Waits from 10, is repaired of the other 15-20, and waits on.
    const outcome = ran(small('30 s', body('on-hand: 0, up-to: 1, lead-time: 40 s', two)));
    expect(seconds(outcome, 'only', 30)).toEqual({ working: 10, down: 5, awaiting_spare: 15 });
  });
});
