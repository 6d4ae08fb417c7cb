import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { gaugedCell, ran, seconds, small } from '../line/small-line.ts';

/** One station that takes a blank every 10 s from 0 s on. */
const body = (stock: string, ...responses: string[]) => `
stock:
  blank: { ${stock} }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
policies:
  carry on: []
  while short: [${responses.map((response) => `{ ${response} }`).join(', ')}]`;
const good = (length: string, text: string, policy = 'while short') =>
  ran(small(length, text), policy).counts.good;

describe('slow', () => {
  const half = 'do: slow, station: only, to: 50 %, when: { stock: blank, below: 4, until: 5 }';

  it('stretches the cycles that begin while the stock is low', () => {
    // Three left from 20 s on: cycles of 10 s begun at 0, 10 and 20 s, of 20 s at 30, 50 and 70 s.
    const ends = [10, 20, 30, 50, 70, 90];
    for (const [i, end] of ends.entries()) {
      expect(good(`${end} s`, body('on-hand: 6', half))).toBe(i + 1);
      expect(good(`${end - 1} s`, body('on-hand: 6', half))).toBe(i);
    }
    expect(good('60 s', body('on-hand: 6', half), 'carry on')).toBe(6);
  });

  it('ends when there is enough again', () => {
    // As before; four ordered at 20 s come at 55 s, when one is left: 5 from then on. The cycle begun at 50 s ends at
    // 70 s, then come 80 and, low again at 80 s with the next order out for 115 s, 90, 110 and 130 s.
    const ends = [10, 20, 30, 50, 70, 80, 90, 110, 130, 140];
    const text = body('on-hand: 6, reorder-at: 3, order: 4, lead-time: 35 s', half);
    for (const [i, end] of ends.entries()) {
      expect(good(`${end} s`, text)).toBe(i + 1);
      expect(good(`${end - 1} s`, text)).toBe(i);
    }
  });

  it.each([
    // Low at 20 s and very low at 50 s: the last cycle, begun at 70 s, is slower still, or as slow as before.
    ['the slower later', [4, 2], [50, 25], 110],
    ['the slower first', [2, 4], [25, 50], 90],
  ] as const)('twice goes by the later of the two: %s', (_, below, to, end) => {
    const both = [0, 1].map(
      (i) => `do: slow, station: only, to: ${to[i]} %, when: { stock: blank, below: ${below[i]} }`,
    );
    expect(good(`${end} s`, body('on-hand: 6', ...both))).toBe(6);
    expect(good(`${end - 1} s`, body('on-hand: 6', ...both))).toBe(5);
  });

  it('comes on top of a speed that the station has', () => {
    const text = body('on-hand: 1', 'do: slow, station: only, to: 50 %, when: { stock: blank, below: 2 }');
    const slower = text.replace('cycle: 10 s', 'cycle: 10 s, speed: 80 %');
    // Low from the start on: 10 s / (0.8 x 0.5).
    expect(good('25 s', slower)).toBe(1);
    expect(good('24 s', slower)).toBe(0);
  });
});

describe('hold', () => {
  const text = (...more: string[]) =>
    body(
      'on-hand: 4, reorder-at: 1, order: 4, lead-time: 35 s',
      'do: hold, station: only, when: { stock: blank, below: 2, until: 5 }',
      ...more,
    );

  it('stops a station while the stock is low, after the cycle under way', () => {
    // One left at 20 s; four more at 55 s; one left again at 85 s.
    const outcome = ran(small('85 s', text()), 'while short');
    expect(seconds(outcome, 'only', 85)).toEqual({ working: 60, held: 25 });
    expect(outcome.counts.good).toBe(6);
  });

  it('holds from the start where the stock is low at the start', () => {
    const low = text().replace('on-hand: 4', 'on-hand: 1');
    // Ordered at 0 s.
    expect(seconds(ran(small('45 s', low), 'while short'), 'only', 45)).toEqual({ held: 35, working: 10 });
  });

  it('for two reasons goes on when both are gone', () => {
    // Held for the second one until 55 s, too: as before.
    const outcome = ran(
      small('85 s', text('do: hold, station: only, when: { stock: blank, below: 1 }')),
      'while short',
    );
    expect(seconds(outcome, 'only', 85)).toEqual({ working: 60, held: 25 });
  });
});

describe('expedite', () => {
  const text = (reorderAt: number, below: number) =>
    body(
      `on-hand: 5, reorder-at: ${reorderAt}, order: 5, lead-time: 100 s, expedite: { lead-time: 20 s, price: 2 }`,
      `do: expedite, stock: blank, when: { stock: blank, below: ${below} }`,
    );

  it('asks for the oldest order when the stock becomes low', () => {
    // Ordered at 20 s with two left; one is left at 30 s: it comes at 50 s. The same again 50 s later.
    const { counts, stocks } = ran(small('100 s', text(2, 2)), 'while short');
    expect(counts.started).toBe(11);
    expect(stocks.blank).toMatchObject({ expedite_cost: 2 * 5 * 2, delivered_pieces: 10 });
    // Otherwise the station waits from 50 s on.
    expect(ran(small('100 s', text(2, 2))).counts.started).toBe(5);
  });

  it('asks for an order that is placed while the stock is low', () => {
    // Low from 20 s on; ordered at 30 s, there at 50 s, one taken then.
    const line = prepare(small('50 s', text(1, 3)), 'while short', 1);
    line.calendar.run(50);
    expect(line.stocks.get('blank')!.onHand).toBe(4);
  });
});

describe('retarget', () => {
  /** Readings of trays, 0.1 mm wider for each °C. */
  const readings = (sheet: string, policy: string, length: number, rest = '') => {
    const text = `${gaugedCell({ sheet })}${rest}\npolicies:\n  while short: [${policy}]`;
    const line = prepare(small(`${length} s`, text), 'while short', 1);
    const seen: number[] = [];
    line.gauges.get('gauging')!.readingListeners.push((_, reading) => seen.push(reading));
    line.calendar.run(length);
    return seen;
  };
  const warmer = '{ do: retarget, setting: heater, by: 10 °C, when: { stock: sheet, below: 3 } }';

  it('makes another variant of what is formed while the stock is low', () => {
    // Two are left once that of 20 s is loaded.
    const seen = readings('on-hand: 5', warmer, 80);
    expect(seen.map((reading) => Number(reading.toFixed(9)))).toEqual([100, 100, 100, 101, 101]);
  });

  it('is no deviation for what retunes the setting', () => {
    // The heater runs hot from 5 s on, which is cancelled, and the 10 °C asked for stay.
    const hot = 'disturbances: { hot: { disturbs: setting, setting: heater, by: 7 °C, at: 5 s, for: 1 h } }';
    const retuned = `${warmer}, { do: retune, setting: heater, by: rim, rule: deadbeat, deadband: 0 mm }`;
    const seen = readings('on-hand: 2', retuned, 100, hot);
    const stocked = readings('on-hand: 2, reorder-at: 0, order: 1, lead-time: 1 s', retuned, 200, hot);
    expect(seen.map((reading) => Number(reading.toFixed(9)))).toEqual([101, 101.7]);
    expect(stocked.length).toBeGreaterThan(10);
    for (const reading of stocked.slice(4)) expect(reading).toBeCloseTo(101, 9);
  });
});
