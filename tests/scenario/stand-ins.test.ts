import { describe, expect, it } from 'vitest';
import { kindsOf, originalsOf } from '../../src/scenario/stand-ins.ts';
import { changed, expectRefused, refuses, SOUND } from './sample.ts';

it('stocks that stand in for each other are found in both directions', () => {
  const stocks = [
    { name: 'a', standsInFor: undefined },
    { name: 'c', standsInFor: 'b' },
    { name: 'b', standsInFor: 'a' },
    { name: 'd', standsInFor: undefined },
  ];
  expect(originalsOf('c', stocks)).toEqual(['c', 'b', 'a']);
  expect(kindsOf('a', stocks)).toEqual(['a', 'c', 'b']);
  expect(kindsOf('b', stocks)).toEqual(['b', 'c']);
  expect(kindsOf('d', stocks)).toEqual(['d']);
});

const film = '  film: { unlimited: true }\n';
const more = (entries: string) => `${film}${entries}`;
const frame = (keys: string) => more(`  frame b: { unlimited: true, ${keys} }\n`);
const groove = 'features: { groove: { nominal: 121 mm } }';
const sheet = (keys: string, at = '') =>
  more(`  thick: ${at}{ on-hand: 9, stands-in-for: sheet, thickness: { nominal: 0.6 mm }${keys} }\n`);

describe('a stock that stands in for another', () => {
  refuses([
    [film, frame(`stands-in-for: ¤frme, ${groove}`), '"frme" is no stock; did you mean "frame"?'],
    [film, frame(`stands-in-for: ¤frame b, ${groove}`), 'a stock cannot stand in for itself'],
    [
      film,
      more(
        '  a: { unlimited: true, stands-in-for: ¤b }\n  b: { unlimited: true, stands-in-for: c }\n  c: { unlimited: true, stands-in-for: a }\n',
      ),
      'these stand in for each other in a circle: a > b > c > a; let one of them stand in for none',
    ],
    [
      film,
      frame('stands-in-for: frame, features: { ¤groov: { nominal: 121 mm }, groove: { nominal: 121 mm } }'),
      '"groov" is no feature of "frame"; did you mean "groove"?',
    ],
    [
      film,
      more('  frame b: ¤{ unlimited: true, stands-in-for: frame }\n'),
      '"frame" has "groove" besides, so what stands in for it needs the same',
    ],
    [
      film,
      more('  thick: ¤{ on-hand: 9, stands-in-for: sheet }\n'),
      '"sheet" has a thickness, so what stands in for it needs one',
    ],
    [
      film,
      more('  film b: { unlimited: true, stands-in-for: film, thickness: ¤{ nominal: 1 mm } }\n'),
      '"film" has no thickness to compare it with',
    ],
    [film, sheet(', settings: { ¤heatr: 153 °C }'), 'did you mean "heater"?'],
    [film, sheet(', settings: { heater: ¤153 kPa }'), '"heater" is a temperature, so expected one'],
    [film, sheet(', shifts: { ¤tab: 0.1 mm }'), '"tab" is no feature that is formed from it'],
    [film, sheet(', shifts: { rim: ¤0.1 °C }'), 'expected a length with its unit'],
    [
      film,
      frame(`stands-in-for: frame, ${groove}, settings: { ¤heater: 153 °C }`),
      '"heater" is no setting of a station that forms it',
    ],
    [
      film,
      more('  film b: { unlimited: true, settings: ¤{ heater: 153 °C } }\n'),
      'only what stands in for another sheet has these; add "stands-in-for"',
    ],
  ]);

  it('has targets that its setting can be moved to', () => {
    expectRefused(
      changed(
        film,
        sheet(', settings: { heater: ¤153 °C }'),
        changed('cycle-sd: 0.6 °C }', 'cycle-sd: 0.6 °C, moves: { to: 152 °C } }'),
      ),
      '"heater" cannot be moved there',
    );
  });

  it('is not taken beside it by one station', () => {
    expectRefused(
      changed(
        film,
        frame(`stands-in-for: frame, ${groove}`),
        changed('takes: [frame]', 'takes: [frame, ¤frame b]'),
      ),
      '"frame b" stands in for "frame", which this station takes already',
    );
  });
});

describe('substitute', () => {
  const text = changed(film, sheet(''), SOUND);
  const carryOn = '  carry on: []\n';
  const policy = (keys: string) =>
    `${carryOn}  other: [{ do: substitute, ${keys}, when: { stock: sheet, below: 1 } }]\n`;
  refuses(
    [
      [carryOn, policy('for: ¤shet, by: thick'), '"shet" is no stock; did you mean "sheet"?'],
      [carryOn, policy('for: sheet, by: ¤thik'), '"thik" is no stock; did you mean "thick"?'],
      [carryOn, policy('for: sheet, by: ¤sheet'), 'a stock cannot take its own place'],
      [
        carryOn,
        policy('for: sheet, by: ¤film'),
        '"film" does not stand in for "sheet"; give that stock "stands-in-for: sheet"',
      ],
    ],
    text,
  );

  it('replaces what a station takes', () => {
    const unused = changed(film, more('  foil: { unlimited: true, stands-in-for: film }\n'), SOUND);
    expectRefused(changed(carryOn, policy('for: ¤film, by: foil'), unused), 'no station takes "film"');
  });
});
