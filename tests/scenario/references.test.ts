import { describe, it } from 'vitest';
import { changed, expectRefused, refuses, SOUND } from './sample.ts';

describe('a station', () => {
  refuses([
    ['to: packing', 'to: ¤paking', '"paking" is no station (or "good"); did you mean "packing"?'],
    ['to: packing', 'to: ¤assembly', 'a station cannot pass its parts to itself'],
    ['to: packing', 'to: ¤forming', '"forming" takes from stock, so no station can feed it'],
    ['takes: sheet', 'takes: ¤shet', '"shet" is no stock; did you mean "sheet"?'],
    [
      '  forming:\n    does: form\n    takes: sheet',
      '  ¤forming:\n    does: form',
      '"takes" is missing: expected a name (the stock of sheet)',
    ],
    ['makes: tray', 'makes: ¤9', 'expected a name that does not start with a digit'],
    ['makes: tray', 'makes: ¤try', '"try" is no kind of part; did you mean "tray"?'],
    ['heating: 24 s/mm', 'heating: ¤24 s/°C', 'expected a time per length, such as 16 s/mm'],
    ['heating: 24 s/mm', 'heating: ¤-24 s/mm', 'heating time cannot be negative'],
    [
      '      rim: { repeatability',
      '      rim: { repeatability: 0 mm }\n      ¤rin: { repeatability',
      '"rin" is no feature; did you mean "rim"?',
    ],
    ['off-limits: pass', 'off-limits: ¤pas', 'did you mean "pass"?'],
    [
      'off-limits: pass',
      'off-limits: ¤packing',
      '"packing" is a station that does work; expected one that does rework',
    ],
    ['misfit: bench', 'misfit: ¤pass', '"pass" is no place for rejects (scrap or a rework station)'],
    ['takes: [frame]', 'takes: [frame, ¤frme]', '"frme" is no stock; did you mean "frame"?'],
    ['takes: [frame]', 'takes: [frame, ¤frame]', '"frame" is listed twice'],
    ['hole: frame.groove', 'hole: ¤frame.grove', 'did you mean "frame.groove"?'],
    ['shaft: rim', 'shaft: ¤rm', 'did you mean "rim"?'],
    [
      '- { hole: frame.groove',
      '- ¤{ hole: tab',
      'one feature of the part and one of a mate (written MATE.FEATURE)',
    ],
    ['rim: { removes', '¤rims: { removes', '"rims" is no feature; did you mean "rim"?'],
    [
      'packing: { does: work, buffer: 9, cycle: 3 s',
      'packing: ¤{ does: work, cycle: 3 s',
      '"buffer" is missing',
    ],
    [
      'cycle: 3 s, to: good }',
      'cycle: 3 s, to: good }\n  side: { does: work, takes: film, buffer: ¤9, cycle: 3 s, to: packing }',
      'a station that takes from stock has no buffer in front',
    ],
    [
      'cycle: 3 s, to: good }',
      'cycle: 3 s, to: good }\n  side: { does: work, takes: ¤flim, cycle: 3 s, to: packing }',
      '"flim" is no stock; did you mean "film"?',
    ],
    [
      'cycle: 3 s, to: good }',
      'cycle: 3 s, to: good }\n  side: ¤{ does: work, buffer: 9, cycle: 3 s, to: good }',
      'nothing feeds "side": no station passes parts to it, and it is no source',
    ],
    ['to: packing', 'to: ¤scrap', '"scrap" is no station'],
  ]);

  it.each(['good', 'scrap', 'pass'])('is not called "%s", which has a meaning of its own', (word) => {
    expectRefused(
      changed(
        'cycle: 3 s, to: good }',
        `cycle: 3 s, to: good }\n  ${word}: ¤{ does: work, buffer: 9, cycle: 3 s, to: packing }`,
      ),
      `"${word}" has a meaning of its own; give the station another name`,
    );
  });

  it('that sends its parts round for ever is told once, with the way they go', () => {
    expectRefused(
      changed('cycle: 3 s, to: good', 'cycle: 3 s, to: gauging').replace(
        'pass\n    to: assembly',
        'pass\n    to: ¤assembly',
      ),
      'parts from here go round for ever: gauging > assembly > packing > gauging; let one station pass to "good"',
    );
  });

  it('that starts parts of its own beside the forming station is refused', () => {
    expectRefused(
      changed(
        '  packing: { does',
        '  extra: ¤{ does: work, takes: film, cycle: 3 s, to: packing }\n  packing: { does',
      ),
      'parts start at "forming" already; a line has one forming station',
    );
  });

  it('that a policy retunes twice is refused', () => {
    const line = '    - { do: retune, setting: heater, by: rim, weight: 20 %, deadband: 0.03 mm }\n';
    expectRefused(
      changed(line, line + line.replace('setting: ', 'setting: ¤')),
      'this policy retunes "heater" already',
    );
  });

  it('that is fed only by stations that nothing feeds is refused with them', () => {
    expectRefused(
      changed(
        'disturbances:\n',
        '  ¤island: { does: work, buffer: 2, cycle: 3 s, to: shore }\n  ¤shore: { does: work, buffer: 2, cycle: 3 s, to: good }\ndisturbances:\n',
      ).replace(/¤(island|shore): /g, '$1: ¤'),
      'nothing feeds "island"',
      'nothing feeds "shore"',
    );
  });

  it('that gauges what is made only later is refused', () => {
    const later = changed('made-at: trimming', 'made-at: packing').replace(
      'packing: { does: work',
      'packing: { does: trim',
    );
    expectRefused(
      changed(
        '      rim: { repeatability',
        '      tab: { repeatability: 0 mm }\n      rim: { repeatability',
        later,
      ).replace('  gauging:\n', '  ¤gauging:\n'),
      '"tab" is used here, but made only later, at "packing"',
    );
  });

  it('that feeds itself by way of a wrong name is told the name alone', () => {
    expectRefused(
      changed(
        '{ does: work, buffer: 9, cycle: 3 s, to: good',
        '{ does: work, buffer: 9, cycle: 3 s, to: ¤goo',
      ),
      'did you mean "good"?',
    );
  });

  it('of two forming stations has settings with names of their own', () => {
    expectRefused(
      changed(
        'to: trimming\n',
        'to: trimming\n  second:\n    does: form\n    takes: sheet\n    makes: tray\n    per-sheet: 2\n' +
          '    cycle: 12 s\n    settings:\n      heater: ¤{ target: 140 °C }\n    to: trimming\n',
      ),
      'another station has a setting "heater" already',
    );
  });

  it('heats by a thickness that its stock must have', () => {
    expectRefused(
      changed('thickness: { nominal: 0.5 mm }', '')
        .replace('heating: 24', 'heating: ¤24')
        .replace('thickness: 1.5', 'thickness: ¤1.5'),
      'the stock "sheet" has no thickness',
      'heating goes by thickness, but the stock "sheet" has none',
    );
  });
});

describe('a part', () => {
  refuses([
    ['made-at: trimming', 'made-at: ¤triming', 'did you mean "trimming"?'],
    [
      '      tab:\n        nominal: 18 mm\n        made-at: trimming',
      '      ¤tab:\n        nominal: 18 mm',
      '"made-at" is missing: expected a name (the forming or trimming station',
    ],
    [
      'made-at: trimming',
      'made-at: ¤marking',
      '"marking" is a station that does mark; expected one that does form or trim',
    ],
    ['made-at: trimming', 'made-at: trimming\n        mould: ¤18 mm', 'only a formed feature has a mould'],
    [
      'made-at: trimming',
      'made-at: trimming\n        gains: ¤{ heater: 1 mm/K }',
      'only a formed feature follows',
    ],
    ['cavities: [0.02 mm, -0.02 mm]', 'cavities: ¤[0.02 mm]', '1 offsets for 2 cavities'],
    ['thickness: 1.5 mm/mm', 'thickness: 1.5 mm/mm, ¤heatr: 1 mm/K', 'did you mean "heater"?'],
    ['-0.03 mm/°C', '¤-0.03 mm/bar', '"heater" is a temperature, so its gain is a length per temperature'],
    ['1.5 mm/mm', '¤1.5 mm/°C', '"thickness" is a length, so its gain is a length per length'],
    ['1.5 mm/mm', '¤1.5 s/mm', 'expected a length per something, such as 0.012 mm/°C'],
    ['shrinkage: 0.4 %', 'shrinkage: ¤0.4', '0.4 has no unit'],
    ['tolerance: 0.2 mm', 'tolerance: ¤0 mm', '0 mm is not allowed: a length here is above zero'],
    ['stations:\n', '  lid: ¤{ features: {} }\nstations:\n', 'a line makes one kind of part'],
  ]);

  it('that shrinks needs the size in the mould', () => {
    expectRefused(
      changed('      rim:\n        nominal', '      ¤rim:\n        nominal').replace(
        '        mould: 120.5 mm\n',
        '',
      ),
      'shrinkage needs "mould", the size it shrinks from',
    );
  });
});

describe('a stock', () => {
  refuses([
    [
      '  film: { unlimited: true }',
      '  film: ¤{}',
      'expected "on-hand: 400" (pieces at the start) or "unlimited: true"',
    ],
    ['film: { unlimited: true }', 'film: { unlimited: ¤no }', 'expected true, or leave it out'],
    [
      '  film: { unlimited: true }',
      '  film: ¤{ unlimited: true, on-hand: 4 }',
      'an unlimited stock needs no on-hand',
    ],
    [
      '  film: { unlimited: true }',
      '  film: ¤{ on-hand: 4, order: 4 }',
      'all three of reorder-at, order and lead-time',
    ],
    ['on-hand: 90', 'on-hand: ¤-1', 'expected a whole number from 0'],
    ['on-hand: 90', 'on-hand: ¤9.5', 'expected a whole number from 0'],
    ['lead-time: 2 h', '¤lead-tme: 2 h\n    lead-time: 2 h', 'did you mean "lead-time"?'],
  ]);
});

describe('a disturbance', () => {
  refuses([
    ['disturbs: setting, setting: heater', 'disturbs: setting, setting: ¤heatr', 'did you mean "heater"?'],
    [
      'cold: { disturbs: setting, setting: heater',
      'cold: ¤{ disturbs: setting',
      '"setting" is missing: expected a name (the forming setting',
    ],
    ['by: -6 °C', 'by: ¤-6 bar', '"heater" is a temperature, so expected a change in its units (°C, C, K)'],
    ['by: -6 °C', 'by: ¤-6', '"-6": expected a value with its unit'],
    ['stock: sheet,', 'stock: ¤shet,', 'did you mean "sheet"?'],
    ['stock: sheet,', 'stock: ¤frame,', '"frame" is never ordered, so its supplier cannot fail it'],
    ['marks, station: marking', 'marks, station: ¤making', 'did you mean "marking"?'],
    ['marks, station: marking', 'marks, station: ¤packing', 'expected one that does mark'],
    ['station, station: packing', 'station, station: ¤paking', 'did you mean "packing"?'],
    ['{ disturbs: marks', '{ disturbs: ¤mark', 'did you mean "marks"?'],
    [
      '  halt: { disturbs: station, ',
      '  halt: ¤{ ',
      'expected a mapping with "disturbs", one of setting, supplier',
    ],
  ]);
});

describe('what a stock says of itself', () => {
  it('is what somebody goes by', () => {
    const frame = 'groove: { nominal: 120.3 mm }\n';
    expectRefused(
      changed(frame, `${frame}    shrinkage: ¤{ lot-sd: 0.1 % }\n    thickness: ¤{ nominal: 1 mm }\n`),
      'it matters only where a station does form with "frame", but "assembly" does assemble; take it out',
      'it matters only where a station does form with "frame", but "assembly" does assemble; take it out',
    );
    const sheet = 'thickness: { nominal: 0.5 mm }\n';
    expectRefused(
      changed(sheet, `${sheet}    features: ¤{ edge: { nominal: 1 mm } }\n`),
      'it matters only where a station does assemble with "sheet", but "forming" does form; take it out',
    );
  });
});

describe('a response', () => {
  const sees = 'at: assembly, sees: misfits';
  refuses([
    ['      station: forming', '      station: ¤frming', 'did you mean "forming"?'],
    [sees, 'at: ¤asembly, sees: misfits', 'did you mean "assembly"?'],
    [sees, 'at: ¤packing, sees: misfits', 'expected one that does gauge or assemble'],
    [sees, 'at: gauging, sees: ¤misfits', '"gauging" gauges; misfits are seen where parts are assembled'],
    [sees, 'at: assembly, sees: ¤off-limits', 'readings off limits are seen where parts are gauged'],
    [sees, 'at: gauging, sees: ¤unread', '"gauging" has no reader'],
    [sees, 'at: assembly, sees: ¤misfit', 'did you mean "misfits"?'],
    ['count: 5, of-last: 25', 'count: ¤26, of-last: 25', '"count" cannot be more than "of-last"'],
    ['at: gauging, every: 1', 'at: ¤assembly, every: 1', 'expected one that does gauge'],
    ['off-limits: scrap }', 'off-limits: ¤srap }', 'did you mean "scrap"?'],
    ['off-limits: scrap }', 'off-limits: ¤packing }', 'expected one that does rework'],
    ['retune, setting: heater', 'retune, setting: ¤heatr', 'did you mean "heater"?'],
    ['by: rim, weight', 'by: ¤rin, weight', 'did you mean "rim"?'],
    ['match, at: assembly', 'match, at: ¤gauging', 'expected one that does assemble'],
    ['rework, at: assembly', 'rework, at: ¤packing', 'expected one that does gauge or assemble'],
    ['bench: bench }', 'bench: ¤bnch }', 'did you mean "bench"?'],
    ['bench: bench }', 'bench: ¤packing }', 'expected one that does rework'],
    ['carry on: []', 'carry on: ¤nothing', 'expected a list of responses; [] does nothing'],
  ]);

  it('retunes by a feature that is gauged and follows the setting', () => {
    expectRefused(
      changed('by: rim, weight', 'by: ¤¤tab, weight'),
      '"tab" has no gain for "heater"',
      'no station gauges "tab"',
    );
  });

  it('does not retune by what is gauged before parts are marked, which tells of no part how it was formed', () => {
    const first = changed('to: trimming', 'to: gauging', SOUND)
      .replace('off-limits: pass\n    to: assembly', 'off-limits: pass\n    to: trimming')
      .replace('takes-hold: 99 %, to: gauging }', 'takes-hold: 99 %, to: assembly }');
    expectRefused(
      changed('by: rim, weight', 'by: ¤rim, weight', first),
      '"rim" is gauged at "gauging" before parts are marked, so no reading tells how its part was formed; let "marking" come first',
    );
  });

  it('is part of one policy at least', () => {
    expectRefused(
      `${SOUND.slice(0, SOUND.indexOf('policies:'))}policies: ¤{}\n`,
      'expected at least one policy, such as "carry on: []"',
    );
  });
});
