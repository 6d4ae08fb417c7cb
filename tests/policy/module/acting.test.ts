import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../src/policy/module/cell.ts';
import { blanks, small } from '../../line/small-line.ts';
import { demo, expectSame } from './cell-sample.ts';
import { ranWith } from './run-code.ts';

const LOW = { stock: 'frame', below: 1500, until: 2500 };
const WHEN = 'when: { stock: frame, below: 1500, until: 2500 }';

describe('what a policy as code does', () => {
  it('before the line starts sets no station to work', () => {
    // From 1 h on it works; it would have begun at once, out of its hours.
    const scenario = small(
      '2 h',
      `${blanks('  only: { does: work, takes: blank, cycle: 10 min, to: good, calendar: late }')}
calendars:
  late: { shifts: [{ days: [mon], begins: 1 h, lasts: 8 h }] }`,
    );
    const outcome = ranWith(scenario, (cell) => {
      cell.hold('only');
      cell.release('only');
    });
    expect(outcome).toEqual(ranWith(scenario, () => {}));
    expect(outcome.counts.good).toBe(6);
  });

  it.each<[string, string, (cell: Cell) => void]>([
    [
      'hold',
      `{ do: hold, station: forming, ${WHEN} }`,
      (cell) => {
        let held = false;
        cell.when(LOW, (low) => {
          if (low) cell.hold('forming');
          else if (held) cell.release('forming');
          held = low;
        });
      },
    ],
    [
      'expedite',
      `{ do: expedite, stock: frame, ${WHEN} }`,
      (cell) => {
        let hurries = false;
        cell.onOrder('frame', (order) => {
          if (hurries) cell.expedite('frame', order);
        });
        cell.when(LOW, (low) => {
          hurries = low;
          if (low) cell.expedite('frame');
        });
      },
    ],
  ])('is what a response does: %s', (_, response, start) => {
    expectSame(response, start);
  });

  it('is told whether an order will come sooner', () => {
    const answers: boolean[] = [];
    ranWith(demo, (cell) => {
      cell.onOrder('frame', () =>
        cell.after(1, () => answers.push(cell.expedite('frame'), cell.expedite('frame'))),
      );
    });
    // The same order cannot be sped up twice.
    expect(answers.slice(0, 2)).toEqual([true, false]);
  });

  it.each<[string, (cell: Cell) => void, string]>([
    [
      'a station',
      (cell) => cell.hold('formng'),
      'hold: "formng" is no station that can be held; did you mean "forming"?',
    ],
    ['a name', (cell) => cell.fix({} as never), 'fix: a value of type object is no station'],
    ['a held station', (cell) => cell.release('forming'), 'release: "forming" is not held by this policy'],
    [
      'held as often',
      (cell) => {
        cell.hold('forming');
        cell.release('forming');
        cell.release('forming');
      },
      'is not held by this policy',
    ],
    [
      'a setting',
      (cell) => cell.adjust('forming', 1),
      'adjust: "forming" is no setting of a forming station',
    ],
    [
      'a number',
      (cell) => cell.adjust('heater', Number.POSITIVE_INFINITY),
      'adjust: Infinity is not a number',
    ],
    [
      'a stock whose orders can be sped up',
      (cell) => cell.expedite('sheet'),
      'expedite: "sheet" is no stock whose orders can be sped up; known here: frame',
    ],
    ['an order', (cell) => cell.expedite('frame', 1.5), 'expedite: 1.5 is not a whole number from 0'],
  ])('must be %s', (_, start, message) => {
    expect(() => ranWith(demo, start)).toThrow(message);
  });
});
