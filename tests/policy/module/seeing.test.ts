import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../src/policy/module/cell.ts';
import { demo, expectSame } from './cell-sample.ts';
import { ranWith } from './run-code.ts';

/** Holds forming as `stop-and-fix` does. */
function stopAndFix(cell: Cell, watch: (act: () => void, deaf: () => boolean) => void): void {
  let deafUntil = 0;
  const act = () => {
    deafUntil = cell.now + 3600 + 1200;
    cell.hold('forming');
    cell.after(3600, () => {
      cell.fix('forming');
      cell.release('forming');
    });
  };
  watch(act, () => cell.now < deafUntil);
}

describe('what a policy as code sees', () => {
  it('are the sights of a response', () => {
    expectSame(
      '{ do: stop-and-fix, station: forming, watch: { at: assembly, sees: misfits, count: 5, of-last: 25 }, takes: 1 h, cool-down: 20 min }',
      (cell) =>
        stopAndFix(cell, (act, deaf) => {
          let recent: boolean[] = [];
          cell.onSight('assembly', 'misfits', (wrong) => {
            if (deaf()) return;
            recent = [...recent, wrong].slice(-25);
            if (recent.filter(Boolean).length < 5) return;
            recent = [];
            act();
          });
        }),
    );
  });

  it('are the readings at a gauge that a chart goes by', () => {
    expectSame(
      '{ do: stop-and-fix, station: forming, watch: { at: gauging, of: rim, chart: shewhart, sigma: 0.08 mm, limit: 3 }, takes: 1 h, cool-down: 20 min }',
      (cell) =>
        stopAndFix(cell, (act, deaf) => {
          const { aim } = cell.drawn('rim');
          cell.onReading('gauging', 'rim', (value) => {
            if (!deaf() && Math.abs((value - aim) / 0.08) > 3) act();
          });
        }),
    );
  });

  it('are the conditions of a response, those that signal, too', () => {
    expectSame(
      '{ do: change-tool, station: trimming, when: { at: assembly, sees: misfits, count: 5, of-last: 25 } }',
      (cell) => {
        const change = cell.switching({ do: 'change-tool', station: 'trimming' });
        cell.when({ at: 'assembly', sees: 'misfits', count: 5, 'of-last': 25 }, (signals) => {
          if (!signals) return;
          change(true);
          change(false);
        });
      },
    );
    const held: [boolean, number][] = [];
    ranWith(demo, (cell) => {
      cell.when({ from: '1 h', to: '2 h' }, (holds) => held.push([holds, cell.now]));
      cell.when({ station: 'forming', is: 'held' }, () => {});
    });
    expect(held).toEqual([
      [false, 0],
      [true, 3600],
      [false, 7200],
    ]);
  });

  it('is how a feature is drawn, and what it gains by a setting', () => {
    ranWith(demo, (cell) => {
      const { aim, limits } = cell.drawn('rim');
      expect([aim, limits?.lower, limits?.upper]).toEqual([120, 119.75, 120.25]);
      expect(cell.gain('rim', 'heater')).toBe(-0.035);
      expect(cell.gain('tab', 'heater')).toBe(0);
    });
  });
});

describe('what a policy as code asks to be told of', () => {
  const none = () => {};

  it.each<[string, (cell: Cell) => void, string]>([
    ['a feature', (cell) => cell.drawn('rin'), 'drawn: "rin" is no feature; did you mean "rim"?'],
    ['a setting', (cell) => cell.gain('rim', 'heat'), 'gain: "heat" is no setting of a forming station'],
    [
      'a gauge',
      (cell) => cell.onReading('assembly', 'rim', none),
      'onReading: "assembly" is no station that gauges; known here: gauging',
    ],
    [
      'a feature that the gauge measures',
      (cell) => cell.onReading('gauging', 'groove', none),
      'onReading: "groove" is no feature that "gauging" measures',
    ],
    [
      'a gauged feature',
      (cell) => cell.onMarkedReading('groove', 'heater', none),
      'onMarkedReading: "groove" is no feature that is gauged',
    ],
    ['a sight', (cell) => cell.onSight('gauging', 'misfit' as never, none), 'did you mean "misfits"?'],
    [
      'where a sight can be seen',
      (cell) => cell.onSight('gauging', 'misfits', none),
      'onSight: "gauging" is no station that assembles',
    ],
    [
      'where marks are read',
      (cell) => cell.onSight('trimming', 'unread', none),
      'onSight: "trimming" is no station with a reader',
    ],
    [
      'a condition on what can run low',
      (cell) => cell.when({ stock: 'frame b', below: 1 }, none),
      'when: stock: "frame b" is unlimited, so it is never low',
    ],
    [
      'one on what is there',
      (cell) => cell.when({ buffer: 'packing', above: 1 }, none),
      '"packing" is no station',
    ],
    ['one that can be seen', (cell) => cell.when({ truth: 'rim', above: 1 }, none), 'when: '],
    ['one without responses', (cell) => cell.when({ response: 'x' }, none), '"x" is no name of a response'],
    ['a stock with orders', (cell) => cell.onOrder('frme', none), 'did you mean "frame"?'],
    ['something to tell', (cell) => cell.onOrder('frame', 5 as never), 'onOrder: 5 is no function'],
  ])('must be %s', (_, start, message) => {
    expect(() => ranWith(demo, start)).toThrow(message);
  });

  it('must be asked for before the line runs', () => {
    expect(() => ranWith(demo, (cell) => cell.after(60, () => cell.onOrder('frame', none)))).toThrow(
      'onOrder: this is asked for in "start", before the line runs',
    );
  });
});
