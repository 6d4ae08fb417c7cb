import { describe, expect, it } from 'vitest';
import { correlationMatrix } from '../../src/scenario/correlations.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused, refuses, SOUND } from './sample.ts';

const sds = 'own-sd: 0.1 mm, lot-sd: 0.1 mm';
/** SOUND with four features that vary together, and two of the mate. */
const FULL = SOUND.replace(
  '      tab:\n        nominal: 18 mm\n        made-at: trimming\n',
  `      tab: { nominal: 18 mm, made-at: trimming, sheet-sd: 0.1 mm, ${sds} }
      slot: { nominal: 8 mm, made-at: forming, sheet-sd: 0.1 mm, ${sds} }
      rib: { nominal: 8 mm, made-at: forming, ${sds} }
    correlations:
      - { of: [tab, slot], own: 0.6, sheet: 1 }
      - { of: [slot, rib], own: 0.5, lot: -0.7 }
`,
).replace(
  '      groove: { nominal: 120.3 mm }\n',
  `      groove: { nominal: 120.3 mm, ${sds} }
      notch: { nominal: 9 mm, ${sds} }
    correlations: [{ of: [groove, notch], own: 0.4 }]
`,
);

describe('correlations', () => {
  it('are read, with 0 for what is not said', () => {
    const { parts, stocks } = parseScenario(FULL, 'cell.yaml');
    expect(parts[0]!.correlations).toEqual([
      { of: ['tab', 'slot'], own: 0.6, sheet: 1, lot: 0 },
      { of: ['slot', 'rib'], own: 0.5, sheet: 0, lot: -0.7 },
    ]);
    expect(stocks[1]!.correlations).toEqual([{ of: ['groove', 'notch'], own: 0.4, lot: 0 }]);
  });

  it('make a symmetric matrix with ones on its diagonal', () => {
    expect(correlationMatrix(['a', 'b', 'c'], [{ of: ['c', 'a'], by: 0.3 }])).toEqual([
      [1, 0, 0.3],
      [0, 1, 0],
      [0.3, 0, 1],
    ]);
  });

  refuses(
    [
      ['own: 0.6', 'own: ¤1.2', 'expected a number from -1 to 1, such as 0.6'],
      ['own: 0.6', 'own: ¤60 %', 'expected a number from -1 to 1'],
      ['of: [tab, slot]', 'of: ¤[tab]', 'expected two features, such as [rim, tab]'],
      ['of: [tab, slot]', 'of: [tab, ¤slt]', '"slt" is no feature here; did you mean "slot"?'],
      ['of: [tab, slot]', 'of: [tab, ¤groove]', '"groove" is no feature here'],
      ['of: [tab, slot], own: 0.6, sheet: 1', 'of: ¤[tab, tab], own: 0.6', 'expected two different features'],
      ['of: [slot, rib], own: 0.5, lot: -0.7', 'of: ¤[slot, tab], own: 0.5', 'slot and tab are listed twice'],
      ['own: 0.5, lot: -0.7', 'own: 0.5, sheet: ¤0.1', '"rib" has no sheet-sd'],
      ['own: 0.4', 'own: 0.4, ¤sheet: 0.4', 'unknown key "sheet"'],
      ['of: [groove, notch]', 'of: [groove, ¤noch]', 'did you mean "notch"?'],
    ],
    FULL,
  );

  it('of what does not vary are refused', () => {
    expectRefused(
      changed('of: [tab, slot], own: 0.6, sheet: 1', 'of: [rim, slot], own: ¤0.6, sheet: ¤1', FULL),
      '"rim" has no own-sd, so there is nothing to vary together',
      '"rim" has no sheet-sd, so there is nothing to vary together',
    );
  });

  // Eigenvalues of the matrix with 0.9, 0.9 and -0.9 beside the diagonal: 1.9, 1.9 and 1 - 2 x 0.9 = -0.8; times f the
  // least is 1 - 1.8 f, above zero up to f = 0.555.
  it('that contradict each other are refused with what would agree', () => {
    expectRefused(
      changed(
        '      - { of: [tab, slot], own: 0.6, sheet: 1 }\n      - { of: [slot, rib], own: 0.5, lot: -0.7 }',
        '      ¤- { of: [tab, slot], own: 0.9 }\n      - { of: [slot, rib], own: 0.9 }\n      - { of: [tab, rib], own: -0.9 }',
        FULL,
      ),
      'nothing can vary so, the own correlations contradict each other (tab and slot 0.9, slot and rib 0.9, tab and rib -0.9); all of them times 0.55 would agree',
    );
  });
});
