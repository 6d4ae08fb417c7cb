import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { selfCheck } from '../../src/line/self-check.ts';
import { gaugedCell, ran, seconds, small } from '../line/small-line.ts';

const when = (stock: string) => `when: { stock: ${stock}, below: 1 }`;

describe('a mate that stands in for another', () => {
  /** Trays of 10 mm come every 10 s from 10 s on; assembly takes 2 s. The groove of a frame is 11 mm wide. */
  const cell = (frame: string, other: string, keys = '') => `
stock:
  sheet: { unlimited: true }
  frame: { ${frame}, features: { notch: { nominal: 5 mm }, groove: { nominal: 11 mm } } }
  frame b: { stands-in-for: frame, ${other} }
parts:
  tray: { features: { rim: { nominal: 10 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: assembly }
  assembly:
    does: assemble
    buffer: 9
    takes: [frame]
    cycle: 2 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0.5 mm, most: 1.5 mm }]
    misfit: scrap${keys}
    to: good
policies:
  carry on: []
  use b: [{ do: substitute, for: frame, by: frame b, ${when('frame')} }]`;
  const features = (groove: number) =>
    `features: { groove: { nominal: ${groove} mm }, notch: { nominal: 5 mm } }`;

  it('is taken while the other is out, and what fits goes by its sizes', () => {
    // Three trays have a frame, at 10, 20 and 30 s; those of 40 to 90 s take b, whose groove is too narrow or not.
    const wide = ran(small('92 s', cell('on-hand: 3', `on-hand: 9, ${features(11.2)}`)), 'use b');
    expect(wide.counts).toMatchObject({ good: 9, substituted: 6, tight: 0, firstFits: 9 });
    const narrow = ran(small('92 s', cell('on-hand: 3', `on-hand: 9, ${features(10.4)}`)), 'use b');
    expect(narrow.counts).toMatchObject({ good: 3, substituted: 0, tight: 6, scrapped: 6 });
    expect(ran(small('92 s', cell('on-hand: 3', `on-hand: 9, ${features(11.2)}`))).counts.good).toBe(3);
  });

  it('is waited for where it runs out, too, until the other comes', () => {
    // Frames at 10 and 20 s, b at 30 s; from 40 s on trays wait. A frame ordered at 20 s comes at 65 s with three more.
    const text = cell(
      'on-hand: 2, reorder-at: 0, order: 4, lead-time: 45 s',
      `on-hand: 1, ${features(11.2)}`,
    );
    const outcome = ran(small('73 s', text), 'use b');
    // Three waited from 40, 50 and 60 s: done at 67, 69 and 71 s; that of 70 s takes the last and is done at 73 s.
    expect(outcome.counts).toMatchObject({ good: 7, substituted: 1 });
    expect(outcome.stocks.frame).toMatchObject({ out_share: (45 + 2) / 73, stock_outs: 0, fill_rate: 1 });
    expect(outcome.stocks['frame b']).toMatchObject({ stock_outs: 1 });
  });

  it('may be replaced itself', () => {
    const c = `on-hand: 1, ${features(11.2)} }\n  frame c: { stands-in-for: frame b, unlimited: true, ${features(11.4)}`;
    const text = `${cell('on-hand: 1', c)}
  use c:
    - { do: substitute, for: frame, by: frame b, ${when('frame')} }
    - { do: substitute, for: frame b, by: frame c, ${when('frame b')} }`;
    const line = prepare(small('60 s', text), 'use c', 1);
    line.calendar.run(60);
    selfCheck(line);
    // Sheets at 0 to 60 s; a frame at 10 s, b at 20 s and c from 30 s on.
    expect([...line.stocks.values()].map(({ tally }) => tally.taken)).toEqual([7, 1, 1, 4]);
  });

  it('that is in hand already is used first', () => {
    // No frame fits, and each is tried twice: that of 10 and 20 s with the first frame, 30 and 40 s with the second...
    const text = cell(
      'on-hand: 1, reorder-at: 0, order: 1, lead-time: 12 s',
      `unlimited: true, ${features(11)}`,
      '\n    mate-tries: 2',
    ).replace('groove: { nominal: 11 mm } } }', 'groove: { nominal: 9 mm } } }');
    // A frame from 10 s on, tried at 10 and 20 s. The next came at 22 s: 30 and 40 s. Again at 42 s: 50 s.
    expect(ran(small('52 s', text), 'use b').counts).toMatchObject({ tight: 5, substituted: 0 });
  });
});

describe('a sheet that stands in for another', () => {
  it('is formed with its own thickness, targets and shifts', () => {
    const body = gaugedCell({
      sheet:
        'on-hand: 2, thickness: { nominal: 0.5 mm } }\n  thick: { stands-in-for: sheet, on-hand: 3, thickness: { nominal: 0.6 mm }, settings: { heater: 153 °C }, shifts: { rim: 0.04 mm }',
      rim: 'mould: 101 mm, shrinkage: 1 %, curvatures: { thickness: 7 mm/mm² }',
    })
      .replace('heater: 0.1 mm/°C', 'heater: 0.1 mm/°C, thickness: 2 mm/mm')
      .replace('cycle: 10 s', 'cycle: 5 s\n    heating: 10 s/mm');
    const text = `${body}
policies:
  use thick: [{ do: substitute, for: sheet, by: thick, ${when('sheet')} }]`;
    const scenario = small('62 s', text);
    const line = prepare(scenario, 'use thick', 1);
    const seen: [number, number][] = [];
    line.gauges
      .get('gauging')!
      .readingListeners.push((_, reading) => seen.push([line.calendar.now, reading]));
    line.calendar.run(62);
    // 101 mm less 1 %; then 3 °C, 0.1 mm by gain and by curvature, and the shift: 0.3 + 0.2 + 0.07 + 0.04 mm more.
    const plain = 101 * 0.99;
    const expected = [11, 21, 32, 43, 54].map((at, i) => [at, i < 2 ? plain : plain + 0.61]);
    expect(seen.length).toBe(5);
    for (const [i, [at, reading]] of expected.entries()) {
      expect(seen[i]![0]).toBeCloseTo(at!, 9);
      expect(seen[i]![1]).toBeCloseTo(reading!, 9);
    }
    // 5 s and 10 s or 11 s by thickness; then nothing is left.
    const outcome = ran(scenario, 'use thick');
    expect(outcome.counts).toMatchObject({ started: 5, substituted: 3 });
    expect(seconds(outcome, 'forming', 62)).toEqual({ working: 53, starved: 9 });
  });

  it('that a station only works on is taken likewise', () => {
    const text = `
stock:
  blank: { on-hand: 1 }
  other: { stands-in-for: blank, on-hand: 2 }
stations:
  only: { does: work, takes: blank, machines: 2, cycle: 10 s, to: good }
policies:
  other: [{ do: substitute, for: blank, by: other, ${when('blank')} }]`;
    // Both machines load at 0 s: the second what stands in.
    const outcome = ran(small('20 s', text), 'other');
    expect(outcome.counts).toMatchObject({ started: 3, good: 3, substituted: 2 });
    expect(outcome.stocks.blank).toMatchObject({ out_share: 1 });
  });
});
