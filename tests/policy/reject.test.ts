import { describe, expect, it } from 'vitest';
import { gaugedCell, ran, small } from '../line/small-line.ts';

/** A tray every 10 s from 10 s on, 0.7 mm too large, judged 1 s later; rejects pass unless something is done. */
const cell = (sheet: string, ...responses: string[]) => `${gaugedCell({ sheet, rim: 'tolerance: 0.1 mm' })}
disturbances: { hot: { disturbs: setting, setting: heater, by: 7 °C, at: 0 s, for: 1 h } }
policies:
  carry on: []
  sort: [${responses.map((response) => `{ ${response} }`).join(', ')}]`;
const scrap = 'do: reject, at: gauging, to: scrap, when: { stock: sheet, below: 3 }';
const counts = (length: number, text: string) => {
  const { good, scrapped } = ran(small(`${length} s`, text), 'sort').counts;
  return { good, scrapped };
};

describe('reject', () => {
  it('sends what is judged while it is in force', () => {
    // Two sheets are left from 20 s on: what is judged at 11 s passes, at 21, 31, 41 and 51 s not.
    expect(counts(60, cell('on-hand: 5', scrap))).toEqual({ good: 1, scrapped: 4 });
  });

  it('leaves them to the station again when it ends', () => {
    // Five ordered with one left at 30 s come at 45 s: what is judged at 51 and 61 s passes.
    const text = cell('on-hand: 5, reorder-at: 1, order: 5, lead-time: 15 s', scrap);
    expect(counts(62, text)).toEqual({ good: 3, scrapped: 3 });
  });

  it('and "inspect" set the same thing: the later of the policy holds', () => {
    const inspect = (to: string) => `do: inspect, at: gauging, every: 1, off-limits: ${to}`;
    const pass = scrap.replace('scrap', 'pass');
    expect(counts(60, cell('on-hand: 5', inspect('scrap'), pass))).toEqual({ good: 4, scrapped: 1 });
    expect(counts(60, cell('on-hand: 5', pass, inspect('scrap')))).toEqual({ good: 0, scrapped: 5 });
  });

  it('sends what does not fit at an assembling station, and to a bench as often as one part may go there', () => {
    // Tray and frame never fit, and the bench leaves a rim as it should be. Trays come at 10, 20 and 30 s and are tried for 1 s; one on
    // the bench takes 2 s and is tried again. Low from the second sheet on: the first is scrapped at 11 s.
    const text = `
stock:
  sheet: { on-hand: 3 }
  frame: { unlimited: true, features: { groove: { nominal: 90 mm } } }
parts: { tray: { features: { rim: { nominal: 100 mm, made-at: forming } } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: assembly }
  assembly:
    does: assemble
    buffer: 5
    takes: [frame]
    cycle: 1 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0 mm, most: 1 mm }]
    misfit: scrap
    to: good
  bench: { does: rework, buffer: unlimited, cycle: 2 s, limit: 1, corrects: { rim: { removes: 10 %, own-sd: 0 mm } }, to: assembly }
policies:
  sort: [{ do: reject, at: assembly, to: bench, when: { stock: sheet, below: 1 } }]`;
    // The third sheet is taken at 20 s: the trays tried at 11 s are scrapped, those of 21 and 31 s go to the bench and are
    // scrapped when tried again, at 24 and 34 s.
    const at = (length: number) => {
      const { scrapped, reworked, tight } = ran(small(`${length} s`, text), 'sort').counts;
      return [scrapped, reworked, tight];
    };
    expect(at(12)).toEqual([1, 0, 1]);
    expect(at(23.5)).toEqual([1, 1, 2]);
    expect(at(24)).toEqual([2, 1, 3]);
    expect(at(34)).toEqual([3, 2, 5]);
  });
});
