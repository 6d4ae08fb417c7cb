import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused, problems, refuses, SOUND } from './sample.ts';

/** SOUND with a tool that wears and is renewed by a set-up, maintenance and the repair of a breakdown. */
const WORN = changed(
  '  trimming: { does: trim, buffer: 9, cycle: 5 s, to: marking }',
  `  trimming:
    does: trim
    buffer: 9
    cycle: 5 s
    set-ups: { blade change: { cycles: 3000, takes: 6 min } }
    maintenance: { overhaul: { every: 40 h, counted: clock, takes: 1 h } }
    breakdowns: { chip: { every: 30 h, counted: working, repair: 20 min, cycle: resumes } }
    tool:
      renewed-by: [blade change, overhaul, chip]
      burr: { first: 0.01 mm, per: 2000, grows: 0.06 mm, own-sd: 0.01 mm, most: 0.1 mm, deburring: 8 s }
    to: marking`,
  changed(
    '        made-at: trimming',
    '        made-at: trimming\n        wear: { per: 1000, shift: -0.02 mm, spread: 0.03 mm }',
  ),
);

const wear = (text: string) =>
  parseScenario(text, 'cell.yaml').parts[0]!.features.find(({ name }) => name === 'tab')!.wear;

describe('the wear of a trimmed feature', () => {
  it('is read with a shift of either sign, and both the shift and the spread may be left out', () => {
    expect(wear(WORN)).toEqual({ per: 1000, shift: -0.02, spread: 0.03 });
    expect(wear(changed('shift: -0.02 mm, spread: 0.03 mm', 'shift: 20 µm', WORN))).toEqual({
      ...{ per: 1000, shift: 0.02, spread: 0 },
    });
    expect(wear(SOUND)).toBeUndefined();
  });

  refuses(
    [
      ['spread: 0.03 mm', 'spread: ¤-0.03 mm', '-0.03 mm is not allowed: a length here is not negative'],
      ['per: 1000', 'per: ¤0', 'expected a whole number from 1 to'],
      ['shift: -0.02 mm', 'shift: ¤-0.02 s', '"-0.02 s": expected a length with its unit'],
      ['shift: -0.02 mm', '¤shfit: -0.02 mm', 'unknown key "shfit"; did you mean "shift"?'],
    ],
    WORN,
  );

  it('is refused for a feature that no tool trims', () => {
    expectRefused(
      changed(
        '        made-at: forming',
        '        made-at: forming\n        wear: ¤{ per: 10, shift: 1 mm }',
        WORN,
      ),
      'only a trimmed feature changes as a tool wears; "forming" does form',
    );
  });
});

describe('a tool', () => {
  refuses(
    [
      [
        'renewed-by: [blade change, overhaul, chip]',
        'renewed-by: [blade change, ¤overhall, ¤chop]',
        '"overhall" is no set-up, maintenance or breakdown of "trimming"; did you mean "overhaul"?',
        'did you mean "chip"?',
      ],
      ['renewed-by: [blade change, overhaul, chip]', 'renewed-by: ¤chip', 'expected a list of set-ups'],
      ['own-sd: 0.01 mm, most', 'own-sd: ¤-0.01 mm, most', 'a length here is not negative'],
      ['first: 0.01 mm', 'first: ¤-0.01 mm', 'a length here is not negative'],
      ['grows: 0.06 mm', 'grows: ¤-0.06 mm', 'a length here is not negative'],
      ['most: 0.1 mm', 'most: ¤0 mm', '0 mm is not allowed: a length here is above zero'],
      ['deburring: 8 s', 'deburring: ¤8 mm', '"8 mm": expected a time with its unit'],
      ['per: 2000', 'per: ¤0.5', 'expected a whole number from 1'],
    ],
    WORN,
  );

  it('may wear features, leave a burr, or both', () => {
    for (const key of ['wear', 'burr'])
      parseScenario(changed(new RegExp(`${key}: .*`).exec(WORN)![0], '', WORN), 'cell.yaml');
  });

  it('is refused where nothing depends on it', () => {
    expectRefused(
      changed(/wear: .*/.exec(WORN)![0], '', changed(/burr: .*/.exec(WORN)![0], '', WORN)).replace(
        '    tool:',
        '    ¤tool:',
      ),
      'nothing depends on this tool: give it a "burr" or a feature that is made at "trimming" a "wear"',
    );
  });

  it.each(['triming', 'marking'])('is taken where what wears is said to be made at "%s"', (place) => {
    const text = changed(/burr: .*/.exec(WORN)![0], '', WORN).replace(
      'made-at: trimming',
      `made-at: ${place}`,
    );
    expect(
      problems(text)
        .map(({ message }) => message)
        .join(),
    ).not.toContain('nothing depends on this tool');
  });

  it('is taken where a part with a problem of its own may depend on it', () => {
    expectRefused(
      changed('spread: 0.03 mm', 'spread: ¤0.03', WORN),
      '0.03 has no unit; expected a length with its unit',
    );
  });
});

describe('a line that forms nothing', () => {
  const LINE = `mendline: 1
title: Blanks
about: Blanks are trimmed and gauged. All figures are invented.
run: { warm-up: 0 h, length: 1 h, seeds: 1 }
stock: { blank: { unlimited: true } }
parts:
  plate:
    features:
      tab: { nominal: 20 mm, made-at: trimming, own-sd: 0.1 mm }
stations:
  loading: { does: work, takes: blank, cycle: 5 s, to: trimming }
  trimming: { does: trim, buffer: 5, cycle: 5 s, to: good }
policies: { carry on: [] }
`;

  it('has parts that share no sheet and no delivery of it', () => {
    expect(parseScenario(LINE, 'line.yaml').parts).toHaveLength(1);
    expectRefused(
      changed('own-sd: 0.1 mm', 'lot-sd: ¤0.1 mm, sheet-sd: ¤0.1 mm', LINE),
      'no station forms parts here, so none share a delivery of sheet; take "lot-sd" out, or give the variation as "own-sd"',
      'no station forms parts here, so none share a sheet; take "sheet-sd" out, or give the variation as "own-sd"',
    );
  });
});
