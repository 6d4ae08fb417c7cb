import { describe, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused, refuses } from './sample.ts';

const carryOn = '  carry on: []\n';
const policy = (response: string) => `${carryOn}  short: [{ ${response} }]\n`;

describe('a condition', () => {
  refuses([
    [
      carryOn,
      policy('do: hold, station: forming, when: { stock: ¤shet, below: 9 }'),
      '"shet" is no stock; did you mean "sheet"?',
    ],
    [
      carryOn,
      policy('do: hold, station: forming, when: { stock: ¤frame, below: 9 }'),
      '"frame" is unlimited, so it is never low',
    ],
    [
      carryOn,
      policy('do: hold, station: forming, when: { stock: sheet, below: ¤0 }'),
      'expected a whole number from 1',
    ],
    [
      carryOn,
      policy('do: hold, station: forming, when: { stock: sheet, below: 9, until: ¤8 }'),
      '"until" must not lie under "below"',
    ],
    [
      carryOn,
      policy('do: hold, station: forming, ¤when: { stock: sheet }'.replace('¤when: ', 'when: ¤')),
      '"below" is missing',
    ],
  ]);
});

describe('what is done while a stock is low', () => {
  const when = 'when: { stock: sheet, below: 9 }';
  refuses([
    [
      carryOn,
      policy(`do: hold, station: ¤formng, ${when}`),
      '"formng" is no station; did you mean "forming"?',
    ],
    [carryOn, policy(`do: slow, station: forming, to: ¤120 %, ${when}`), 'above 0 % and up to 100 %'],
    [carryOn, policy(`do: slow, station: forming, to: ¤0 %, ${when}`), 'above 0 % and up to 100 %'],
    [carryOn, policy(`do: slow, station: ¤fonning, to: 60 %, ${when}`), 'did you mean "forming"?'],
    [
      carryOn,
      policy(`do: expedite, stock: ¤sheet, ${when}`),
      'no order of "sheet" can be sped up; give the stock "expedite: { lead-time: 2 h }"',
    ],
    [carryOn, policy(`do: expedite, stock: ¤shee, ${when}`), 'did you mean "sheet"?'],
    [carryOn, policy(`do: retarget, setting: ¤heatr, by: 4 °C, ${when}`), 'did you mean "heater"?'],
    [
      carryOn,
      policy(`do: retarget, setting: heater, by: ¤4 kPa, ${when}`),
      '"heater" is a temperature, so expected a change in its units (°C, C, K)',
    ],
    [carryOn, policy(`do: ¤retarge, setting: heater, by: 4 °C, ${when}`), 'did you mean "retarget"?'],
  ]);
});

it('a target is not moved further than its setting can be', () => {
  expectRefused(
    changed(
      carryOn,
      policy('do: retarget, setting: heater, by: ¤3 °C, when: { stock: sheet, below: 9 }'),
      changed('cycle-sd: 0.6 °C }', 'cycle-sd: 0.6 °C, moves: { to: 152 °C } }'),
    ),
    '"heater" cannot be moved so far; see its "moves"',
  );
});

describe('a hold that would never end', () => {
  // Forming alone takes sheet, which is ordered at 70, 90 at a time.
  const hold = (station: string, when: string, more = '') =>
    `${carryOn}  short: [{ do: hold, station: ${station}, when: ¤{ stock: sheet, ${when} } }${more}]\n`;
  refuses([
    [
      carryOn,
      hold('forming', 'below: 72'),
      'held with 71 on hand, it would never bring it down to 70, where it is ordered; let "below" be 71 at most, or reorder at 71',
    ],
    [
      carryOn,
      hold('assembly', 'below: 9, until: 161'),
      '"sheet" is ordered up to 160 at most, so that it never has 161 again and "assembly" would be held for good',
    ],
    [
      carryOn,
      hold('forming', 'below: 71', ', { do: keep, stock: sheet, reorder-at: 8 }'),
      'it would never bring it down to 8',
    ],
  ]);

  it('is none where a reserve may end it', () => {
    const scenario = changed(carryOn, hold('forming', 'below: 72').replace('¤', ''));
    parseScenario(scenario.replace('reorder-at: 70', 'reserve: 20\n    reorder-at: 70'), 'cell.yaml');
  });

  it('is none where others take the stock, or it is ordered before', () => {
    for (const [station, when, more] of [
      ['forming', 'below: 71, until: 160'],
      ['assembly', 'below: 90'],
      ['forming', 'below: 80', ', { do: keep, stock: sheet, reorder-at: 79 }'],
    ] as const)
      parseScenario(changed(carryOn, hold(station, when, more).replace('¤', '')), 'cell.yaml');
  });
});

it('a stock is kept in one way by one policy', () => {
  expectRefused(
    changed(carryOn, policy('do: keep, stock: sheet, order: 20 }, { do: keep, stock: ¤sheet, reorder-at: 9')),
    'this policy keeps "sheet" already; say there all of how it does',
  );
});

describe('build-ahead', () => {
  const ahead = (keys: string, more = '') =>
    `${carryOn}  ahead: [{ do: build-ahead, ${keys}, up-to: 6, finish: 4 s, when: { stock: sheet, below: 1 } }${more}]\n`;
  refuses([
    [
      carryOn,
      ahead('at: ¤gauging, without: frame'),
      '"gauging" is a station that does gauge; expected one that does assemble',
    ],
    [carryOn, ahead('at: assembly, without: ¤sheet'), '"sheet" is no mate that "assembly" takes'],
    [carryOn, ahead('at: assembly, without: ¤frme'), 'did you mean "frame"?'],
    [
      carryOn,
      ahead(
        'at: assembly, without: frame',
        ', { do: build-ahead, at: ¤assembly, without: frame, up-to: 1, finish: 1 s, when: { stock: sheet, below: 2 } }',
      ),
      'this policy builds ahead at "assembly" already',
    ],
    [
      'policies:\n  carry on: []\n',
      `carriers: { tray: { number: 9, from: assembly, to: packing } }\npolicies:\n${ahead('at: ¤assembly, without: frame')}`,
      'parts take the carriers "tray" here, so they cannot be put aside',
    ],
  ]);
});
