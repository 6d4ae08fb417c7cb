import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { FLOW } from './flow-sample.ts';
import { changed, expectRefused, refuses, SOUND } from './sample.ts';

describe('where parts go', () => {
  refuses(
    [
      [
        'left oven: 60 %, right',
        '¤left ofen: 60 %, right',
        '"left ofen" is no station (or "good"); did you mean "left oven"?',
      ],
      ['routes: [cooling, packing]', 'routes: [¤coling, packing]', 'did you mean "cooling"?'],
      ['to: milling', 'to: ¤miling', 'did you mean "milling"?'],
      [
        'routes: [cooling, packing]',
        'routes: [cooling, ¤left oven]',
        'a station cannot pass its parts to itself',
      ],
      ['left oven: 60 %', '¤milling: 20 %, left oven: 40 %', 'a station cannot pass its parts to itself'],
      [
        'routes: [cooling, packing]',
        'routes: [cooling, ¤incoming]',
        'parts come to "incoming" from outside, so no station can feed it',
      ],
      [
        'routes: [packing, cooling]',
        'routes: [packing, cooling, ¤packing]',
        '"packing" is listed twice; keep one of the two',
      ],
      [
        '{ left oven: 60 %, right oven: 40 % }',
        '¤{ left oven: 60 %, right oven: 50 % }',
        'the shares sum to 110 %; every part goes one way, so they must sum to 100 %',
      ],
      [
        '{ left oven: 60 %, right oven: 40 % }',
        '¤{ left oven: 0.1 %, right oven: 0.2 % }',
        'the shares sum to 0.3 %',
      ],
      ['{ left oven: 60 %, right oven: 40 % }', '¤{}', 'the shares sum to 0 %'],
      [
        'left oven: 60 %, right',
        'left oven: ¤0 %, right',
        '0 % is not allowed: a share here is above 0 % and up to 100 %',
      ],
      ['left oven: 60 %, right', 'left oven: ¤0.6, right', '0.6 has no unit'],
      [
        '{ left oven: 60 %, right oven: 40 % }',
        '¤[left oven, right oven]',
        'expected a mapping from stations to shares',
      ],
      [
        '[cooling, packing]',
        '¤{ cooling: 50 %, packing: 50 % }',
        'expected a list of stations, such as [a, b]',
      ],
      ['[cooling, packing]', '¤[]', 'expected a list of stations, such as [a, b]'],
      ['by: state', 'by: ¤stat', 'did you mean "state"?'],
      ['{ by: state, routes', '¤{ routes', 'expected a mapping with "by", one of share, priority, state'],
      ['to: milling', 'to: ¤[milling]', 'say where its parts go'],
      [
        '[cooling, packing]',
        '[¤packing, cooling]',
        '"packing" always has room, so no part takes a way listed after it; list it last',
      ],
    ],
    FLOW,
  );

  it('is asked for when it is left out', () => {
    expectRefused(
      changed('    to: milling\n', '', FLOW).replace('  incoming:', '  ¤incoming:'),
      '"to" is missing: say where',
    );
  });

  it('is no circle without a way out, told once, where the file comes to it first', () => {
    expectRefused(
      changed(
        'cycle: 7 s, to: packing',
        'cycle: 7 s, to: right oven',
        changed('[packing, cooling] }', '[cooling] }', FLOW),
      ).replace('to: { by: state', 'to: ¤{ by: state'),
      'parts from here go round for ever: right oven > cooling > right oven; let one station pass to "good"',
    );
  });

  it('is no circle of several ways either', () => {
    expectRefused(
      changed(
        'unload: 4 s }\n    to: good',
        'unload: 4 s }\n    to: { by: share, routes: { left oven: 50 %, right oven: 50 % } }',
        FLOW,
      ).replace('to: { by: priority', 'to: ¤{ by: priority'),
      'parts from here go round for ever: left oven > packing > left oven',
    );
  });
});

describe('the order of stations with several ways', () => {
  const trim = 'trimming: { does: trim, buffer: 9, cycle: 5 s, to: marking }';
  /** A gauge of the trimmed feature, on a way of its own before the trimming. */
  const early = (to: string) =>
    changed(
      '    to: trimming\n',
      '    to: { by: share, routes: { first look: 50 %, trimming: 50 % } }\n',
    ).replace(
      `  ${trim}`,
      `  first look: ¤{ does: gauge, buffer: 9, cycle: 1 s, every: 1, measures: { tab: { repeatability: 0 mm } }, off-limits: pass, ${to} }\n  ${trim}`,
    );

  it('is wrong where a feature is used before it is made, on that way alone', () => {
    expectRefused(early('to: trimming'), '"tab" is used here, but made only later, at "trimming"');
  });

  it('is wrong where a mark is read before it is made', () => {
    expectRefused(
      early('reader: { reads: 99 %, unread: pass }, to: { by: priority, routes: [marking, gauging] }')
        .replace('¤{', '{')
        .replace('tab: { repeat', 'rim: { repeat')
        .replace('reader: { reads: 99 %, unread: pass', 'reader: ¤{ reads: 99 %, unread: pass'),
      'parts are marked only later, at "marking"',
    );
  });

  it('is right where the parts come round again to where it is used', () => {
    const round = changed(
      trim,
      trim.replace('to: marking', 'to: { by: share, routes: { marking: 90 %, first look: 10 % } }'),
      early('to: trimming').replace('¤', ''),
    );
    expect(() => parseScenario(round, 'cell.yaml')).not.toThrow();
  });

  it('is right where the station that makes it is on another way, or passed by', () => {
    const by = changed(
      '    to: trimming\n',
      '    to: { by: share, routes: { marking: 50 %, trimming: 50 % } }\n',
    );
    expect(() => parseScenario(by, 'cell.yaml')).not.toThrow();
  });
});

describe('a station', () => {
  refuses(
    [
      ['    breakdowns:\n', '    ¤breakdown:\n', 'unknown key "breakdown"; did you mean "breakdowns"?'],
      ['machines: 3', 'machines: ¤0', 'expected a whole number from 1 to 1000'],
      ['speed: 90 %', 'speed: ¤0 %', '0 % is not allowed: a share here is above 0 % and up to 100 %'],
      ['speed: 90 %', 'speed: ¤101 %', 'a share here is above 0 % and up to 100 %'],
      [
        'handling: { by: robot, unload: 4 s }',
        'handling: ¤{ by: robot }',
        'handling takes time: give "load", "unload" or both',
      ],
      ['handling: { by: robot, unload: 4 s }', 'handling: ¤{ by: robot, load: 0 s }', 'handling takes time'],
      [
        'handling: { by: robot, unload: 4 s }',
        'handling: { by: ¤robt, unload: 4 s }',
        '"robt" is no crew; did you mean "robot"?',
      ],
      [
        'handling: { by: robot, unload: 4 s }',
        'handling: { unload: 4 s, priority: ¤1 }',
        'without "by" no crew is called, so a priority has no effect',
      ],
      [
        'handling: { by: robot, unload: 4 s }',
        'handling: { by: robot, unload: 4 s, priority: ¤1 }',
        '"robot" serves nearest, so a priority has no effect; take it out, or let the crew serve by priority',
      ],
      [
        'tool change: { cycles: 500,',
        'tool change: ¤{ cycles: 500, every: 2 h,',
        'expected exactly one of "cycles" (a count, such as 500) and "every"',
      ],
      ['tool change: { cycles: 500,', 'tool change: ¤{', 'expected exactly one of "cycles"'],
      [
        'tool change: { cycles: 500,',
        'tool change: { counted: ¤clock, cycles: 500,',
        '"counted" belongs to "every"',
      ],
      ['tool change: { cycles: 500,', 'tool change: { cycles: ¤0,', 'expected a whole number from 1'],
      ['clean: { every: 4 h, counted: working,', 'clean: ¤{ every: 4 h,', '"counted" is missing'],
      ['clean: { every: 4 h,', 'clean: { every: ¤0 s,', 'the time from one to the next must be above zero'],
      ['clean: { every: 4 h,', 'clean: { priority: ¤2, every: 4 h,', 'without "crew" no crew is called'],
      [
        'weekly: { every: 40 h, counted: clock, takes: 1 h, crew: fitter',
        'weekly: { every: 40 h, counted: clock, takes: 1 h, crew: ¤filter',
        'did you mean "fitter"?',
      ],
      ['cycle: scraps, crew: fitter', 'cycle: scraps, crew: ¤fittr', 'did you mean "fitter"?'],
      ['trip: { every: 2 h,', 'trip: { every: ¤0 s,', 'the time from one to the next must be above zero'],
      ['trip: { every: 2 h,', 'trip: { priority: ¤1, every: 2 h,', 'without "crew" no crew is called'],
      ['cycle: restarts', 'cycle: ¤repeats', 'is not known here'],
      ['while-down: nothing', 'while-down: ¤noting', 'did you mean "nothing"?'],
      [
        'calendar: two shifts\n    shift-end',
        'calendar: ¤three shifts\n    shift-end',
        '"three shifts" is no calendar; did you mean "two shifts"?',
      ],
      [
        '    calendar: two shifts\n    shift-end: resumes',
        '    shift-end: ¤finishes',
        'without a calendar no shift ever ends here',
      ],
      ['warm-up: { after: 30 min, takes: 8 min }', 'warm-up: ¤{ after: 30 min }', '"takes" is missing'],
    ],
    FLOW,
  );

  it('that arrives has no machine, buffer or cycle to speak of', () => {
    for (const key of [
      'machines: 2',
      'buffer: 4',
      'cycle: 3 s',
      'breakdowns: {}',
      'handling: { load: 3 s }',
      'shift-end: finishes',
      'speed: 50 %',
    ]) {
      const word = key.slice(0, key.indexOf(':'));
      expectRefused(
        changed('    when-full: lost\n', `    when-full: lost\n    ¤${key}\n`, FLOW),
        `unknown key "${word}"`,
      );
    }
  });

  refuses(
    [
      [
        'distribution: exponential, mean: 40 s',
        'distribution: exponential, mean: ¤0 s',
        '0 s is not allowed',
      ],
      [
        'every: { distribution: exponential, mean: 40 s }',
        'every: ¤0 s',
        'the time from one to the next must be above zero',
      ],
      ['when-full: lost', 'when-full: ¤list', 'did you mean "lost"?'],
    ],
    FLOW,
  );

  it('where parts arrive does not stand beside a forming one', () => {
    expectRefused(
      changed('  packing: { does', '  extra: ¤{ does: arrive, every: 3 s, to: packing }\n  packing: { does'),
      'parts start at "forming" already',
    );
  });
});

describe('a cycle that must start anew', () => {
  const laws = [
    ['constant', '19 s', '19 s'],
    ['uniform', '{ distribution: uniform, low: 1 s, high: 19 s }', '19 s'],
    ['triangular', '{ distribution: triangular, low: 0 s, mode: 1 s, high: 19.9 s }', '19.9 s'],
    ['empirical', '{ distribution: empirical, values: [3 s, 18 s, 12 s] }', '18 s'],
  ] as const;
  // The cycle takes 18 s to 36 s at 90 % of the speed: 20 s at least.
  it.each(laws)('and is always interrupted before, by a %s law, is refused', (_, law, latest) => {
    expectRefused(
      changed(
        'trip: { every: 2 h, counted: clock, repair: 10 s, cycle: ',
        `trip: { every: ${law}, counted: clock, repair: 10 s, cycle: ¤`,
        FLOW,
      ),
      `it breaks down after ${latest} at the latest, but the shortest cycle takes 20 s: no cycle would ever end`,
    );
  });

  it('and is always scrapped before is refused as well', () => {
    expectRefused(
      changed(
        'mean: 1 h }, counted: working, repair: 4 min, cycle: scraps',
        'mean: 1 h }, counted: working, repair: 4 min, cycle: scraps',
        FLOW,
      ).replace(
        'jam: { every: { distribution: exponential, mean: 1 h }, counted: working, repair: 4 min, cycle: ',
        'jam: { every: 5 s, counted: working, repair: 4 min, cycle: ¤',
      ),
      'it breaks down after 5 s at the latest',
    );
  });

  describe('and outlasts every stretch of work is refused', () => {
    // At 90 % of the speed, 15 h 18 min take 17 h.
    const long = changed('{ distribution: uniform, low: 18 s, high: 36 s }', '918 min', FLOW).replace(
      'cycle: restarts',
      'cycle: resumes',
    );
    const breaks = changed(
      '        breaks: [{ after: 3 h, lasts: 15 min }, { after: 6 h, lasts: 10 min }]\n',
      '',
      long,
    );
    const fate = (to: string, text: string) => changed('shift-end: resumes', `shift-end: ${to}`, text);
    it.each([
      // From the second break of the early shift, over its end, to the end of the late one.
      ['by breaks', long, '35400 s'],
      ['by the end of two shifts that follow one another', breaks, '57600 s'],
      [
        'by the end of a day',
        changed('begins: 22 h, lasts: 6 h', 'begins: 10 h, lasts: 3 h', breaks),
        '57600 s',
      ],
    ])('%s', (_, text, longest) => {
      expectRefused(
        fate('¤scraps', text),
        `the shortest cycle takes 61200 s, but no working time of "two shifts" lasts longer than ${longest}: no cycle would ever end; let it finish or resume`,
      );
      expectRefused(fate('¤restarts', text), 'no cycle would ever end');
    });

    it('but not where it just fits, over the end of the week too', () => {
      const sunday =
        '{ days: [sun], begins: 15 h, lasts: 9 h }\n      - { days: [mon], begins: 0 h, lasts: 6 h }';
      const week = changed('{ days: [sat], begins: 22 h, lasts: 6 h }', sunday, breaks);
      for (const text of [week, changed('918 min', '51840 s', breaks)])
        expect(() => parseScenario(fate('restarts', text), 'flow.yaml')).not.toThrow();
    });
  });
});

describe('a buffer', () => {
  refuses(
    [
      ['{ places: 8, transit: 40 s }', '{ places: ¤0, transit: 40 s }', 'expected a whole number from 1'],
      [
        '{ places: 8, transit: 40 s }',
        '{ places: 8, transit: ¤0 s }',
        '0 s is not allowed: a time here is above zero',
      ],
      ['{ places: 8, transit: 40 s }', '¤{ places: 8 }', '"transit" is missing'],
      [
        '{ places: 8, transit: 40 s }',
        '{ places: 8, transit: 40 s, ¤spaces: 1 s }',
        'did you mean "places"?',
      ],
      [
        '{ places: 8, transit: 40 s }',
        '{ places: 8, transit: 40 s, spacing: ¤6 s }',
        '8 parts that enter 6 s apart take 42 s, but the first leaves after 40 s; lower "places" or "spacing", or lengthen "transit"',
      ],
      [
        '{ places: 8, transit: 40 s }',
        '¤8.5',
        'expected a whole number of places up to 1000000, or unlimited, or { places',
      ],
      [
        'batch: 6',
        'batch: ¤9',
        '9 parts never gather in a buffer of 8; make the batch smaller, or the buffer larger',
      ],
      ['buffer: 0, cycle: 7 s', 'buffer: 0, batch: ¤2, cycle: 7 s', '2 parts never gather in a buffer of 0'],
      ['batch: 6', 'batch: ¤0', 'expected a whole number from 1'],
    ],
    FLOW,
  );

  it('is needed for a batch', () => {
    const alone = '  side: { does: work, takes: film, batch: ¤2, cycle: 3 s, to: good }\n';
    expectRefused(
      `${SOUND.slice(0, SOUND.indexOf('parts:'))}stations:\n${alone}policies:\n  carry on: []\n`,
      'a batch gathers in a buffer, and a station that takes from stock has none in front',
    );
  });

  it('is no place for a batch elsewhere than where parts are worked on', () => {
    expectRefused(
      changed('marking: { does: mark,', 'marking: { does: mark, ¤batch: 2,'),
      'unknown key "batch"',
    );
  });
});

describe('a crew', () => {
  refuses(
    [
      [
        'number: 2,',
        'number: ¤0,',
        'expected a whole number from 1 to 1000000; with nobody in the crew, breakdowns would never be repaired',
      ],
      ['number: 2,', 'number: ¤1.5,', 'expected a whole number from 1'],
      ['serves: nearest', 'serves: ¤nearst', 'did you mean "nearest"?'],
      [
        'serves: priority, calendar: two shifts',
        'serves: priority, calendar: ¤two shift',
        'did you mean "two shifts"?',
      ],
      [
        'between: [milling, packing]',
        'between: [¤miling, packing]',
        '"miling" is no station; did you mean "milling"?',
      ],
      [
        'between: [milling, packing]',
        'between: ¤[milling, milling]',
        'a move goes between two stations, not from "milling" to itself',
      ],
      [
        'between: [milling, packing]',
        'between: ¤[milling]',
        'expected two stations, such as [forming, trimming]',
      ],
      [
        'between: [milling, packing]',
        'between: [milling, ¤cooling]',
        '"cooling" never calls "robot", so it is never moved there; it is called by milling, packing',
      ],
      [
        'takes: 9 s }]',
        'takes: 9 s }, { between: ¤[packing, milling], takes: 5 s }]',
        'the move between "packing" and "milling" is listed already; it takes as long either way',
      ],
      [
        '  robot: {',
        '  nurse: ¤{ number: 1 }\n  robot: {',
        'no station uses it; name it under "crew" of a breakdown or set-up, or under "by"',
      ],
    ],
    FLOW,
  );

  it('that serves first-come has no use for a priority', () => {
    expectRefused(
      changed('number: 2, serves: priority', 'number: 2', FLOW)
        .replace('priority: 2', 'priority: ¤2')
        .replace('priority: 3', 'priority: ¤3'),
      '"fitter" serves first-come, so a priority has no effect',
      '"fitter" serves first-come, so a priority has no effect',
    );
  });
});

describe('carriers', () => {
  refuses(
    [
      [
        'number: 60, from: milling',
        'number: 60, from: ¤miling',
        '"miling" is no station; did you mean "milling"?',
      ],
      ['number: 60, from: milling', 'number: 60, from: milling, to: ¤paking', 'did you mean "packing"?'],
      [
        'number: 60, from: milling',
        'number: 60, from: ¤incoming',
        'parts come to "incoming" by themselves; let a station behind it take the carriers',
      ],
      ['number: 60, from: milling', 'number: ¤0, from: milling', 'expected a whole number from 1'],
      [
        'number: 60, from: milling',
        'number: 60, from: milling, to: ¤incoming',
        'parts from "milling" never come to "incoming", so no carrier would be given back',
      ],
      [
        'number: 60, from: milling',
        'number: ¤5, from: milling',
        '5 carriers take 5 parts at once, but "right oven" starts only when 6 are there; give at least 6',
      ],
    ],
    FLOW,
  );

  it('are not taken by a station that parts come back to', () => {
    const round = changed(
      '  packing: { does: work, buffer: 9, cycle: 3 s, to: good }',
      '  packing: { does: work, buffer: 9, cycle: 3 s, to: { by: share, routes: { good: 90 %, trimming: 10 % } } }',
    );
    expectRefused(
      formed('number: 9, from: ¤trimming', round),
      'parts come back to "trimming" and would take a second carrier',
    );
  });

  it('are not taken by a station that parts come back to by rework, under some policy at the least', () => {
    for (const text of [SOUND, changed('misfit: bench', 'misfit: scrap')]) {
      expectRefused(
        formed('number: 9, from: ¤assembly', text),
        'parts come back to "assembly" and would take a second carrier',
      );
    }
    // Behind the bench and before it nothing comes twice.
    for (const from of ['forming', 'packing'])
      expect(parseScenario(formed(`number: 9, from: ${from}`), 'cell.yaml').carriers).toHaveLength(1);
  });

  const formed = (carriers: string, text = SOUND) =>
    changed('disturbances:\n', `carriers:\n  pallet: { ${carriers} }\ndisturbances:\n`, text);

  it('are at least as many as the parts of one sheet', () => {
    expectRefused(
      formed('number: ¤1, from: forming'),
      '"forming" makes 2 parts of one sheet and needs a carrier for each; give at least 2',
    );
  });

  it('suffice for a batch by whole sheets', () => {
    const batch = changed('packing: { does: work, buffer: 9', 'packing: { does: work, batch: 4, buffer: 9');
    expectRefused(
      formed('number: ¤3, from: forming', batch),
      '3 carriers take 2 parts at once, but "packing" starts only when 4 are there; give at least 4',
    );
  });

  it('suffice for a batch only where they are still with their parts', () => {
    const batch = changed('packing: { does: work, buffer: 9', 'packing: { does: work, batch: 4, buffer: 9');
    // The part gives its carrier back before the batch gathers; the last station on the way has a problem to be told.
    expectRefused(
      formed('number: 2, from: forming, to: assembly', batch).replace(
        'halt: { disturbs: station, station: packing',
        'halt: { disturbs: station, station: ¤paking',
      ),
      'did you mean "packing"?',
    );
  });
});

describe('a calendar', () => {
  const shift = '{ days: [sat], begins: 22 h, lasts: 6 h }';
  const breaks = '[{ after: 3 h, lasts: 15 min }, { after: 6 h, lasts: 10 min }]';
  refuses(
    [
      [
        shift,
        '{ days: [sat], begins: 22 h, lasts: ¤25 h }',
        'a shift lasts at most 24 h; a longer time is several shifts',
      ],
      [shift, '{ days: [sat], begins: 22 h, lasts: ¤0 h }', '0 h is not allowed: a time here is above zero'],
      [
        shift,
        '{ days: [sat], begins: ¤24 h, lasts: 6 h }',
        'a day has 24 h; expected a time from midnight below that',
      ],
      [
        shift,
        '{ days: [sat], begins: ¤06:30, lasts: 6 h }',
        'such as 42 s; for a time of day, the time since midnight, 6.5 h',
      ],
      [shift, '{ days: [¤sut], begins: 22 h, lasts: 6 h }', 'did you mean "sat"?'],
      [shift, '{ days: ¤[], begins: 22 h, lasts: 6 h }', 'expected at least one day'],
      [shift, '{ days: ¤sat, begins: 22 h, lasts: 6 h }', 'expected a list of days out of mon, tue'],
      [shift, '{ days: [sat, ¤sat], begins: 22 h, lasts: 6 h }', '"sat" is listed twice'],
      [
        shift,
        '¤{ days: [tue], begins: 21 h, lasts: 6 h }',
        'shifts overlap: one lasts from tue 14:00 to tue 22:00, but the next begins at tue 21:00; shorten it',
      ],
      [
        shift,
        '¤{ days: [sun], begins: 23 h, lasts: 8 h }',
        'shifts overlap: one lasts from sun 23:00 to mon 07:00, but the next begins at mon 06:00',
      ],
      [
        shift,
        '¤{ days: [wed], begins: 23 h, lasts: 7.5 h }',
        'shifts overlap: one lasts from wed 23:00 to thu 06:30, but the next begins at thu 06:00',
      ],
      [breaks, '[¤{ after: 470 min, lasts: 15 min }]', 'this break ends after its shift; let it lie within'],
      [breaks, '[¤{ after: 9 h, lasts: 15 min }]', 'this break ends after its shift'],
      [
        breaks,
        '[¤{ after: 3 h, lasts: 15 min }, { after: 170 min, lasts: 11 min }]',
        'this break begins before another is over; make them one',
      ],
      [
        breaks,
        '¤[{ after: 0 h, lasts: 4 h }, { after: 4 h, lasts: 4 h }]',
        'the breaks leave nothing of the shift',
      ],
      [
        'demand:\n',
        '  nights: { shifts: ¤[] }\ndemand:\n',
        'expected a list with at least one shift; without a calendar a station always works',
      ],
      ['demand:\n', '  nights: ¤{}\ndemand:\n', '"shifts" is missing'],
      ['demand:\n', `  nights: ¤{ shifts: [${shift}] }\ndemand:\n`, 'no station uses it, and no crew'],
    ],
    FLOW,
  );
});

describe('a demand', () => {
  refuses(
    [
      [
        'pieces: 5',
        'pieces: ¤201',
        'an order of 201 can never be served from at most 200 finished goods; raise "most"',
      ],
      ['pieces: 5', 'pieces: ¤0', 'expected a whole number from 1'],
      ['at-start: 10', 'at-start: ¤201', '"at-start" is more than there is room for, 200'],
      ['most: 200', 'most: ¤0', 'expected a whole number from 1'],
      ['due-after: 2 h', 'due-after: ¤2', '2 has no unit'],
      [
        'every: { distribution: exponential, mean: 20 min }',
        'every: ¤0 s',
        'the time from one to the next must be above zero',
      ],
    ],
    FLOW,
  );
});

describe('a problem in one entry', () => {
  it.each([
    ['a crew', 'number: 2,', 'number: ¤0,'],
    ['carriers', 'number: 20,', 'number: ¤0,'],
    ['a calendar', 'begins: 22 h', 'begins: ¤26 h'],
    ['the demand', 'pieces: 5', 'pieces: ¤none'],
    ['a source', 'when-full: lost', 'when-full: ¤last'],
    ['a way', 'left oven: 60 %', 'left oven: ¤60'],
  ])('%s neither causes others nor hides them', (_, from, to) => {
    const faulty = changed(from, to, FLOW);
    expectRefused(faulty, /.*/);
    expectRefused(
      changed(
        'carry on: []',
        'carry on: [{ do: match, at: ¤cooing, among: 9, guard: 0 mm, mate-repeatability: 0 mm, takes: 1 s }]',
        faulty,
      ),
      /.*/,
      'did you mean "cooling"?',
    );
  });

  it('a station with a problem is still asked for its ways', () => {
    expectRefused(
      changed('[packing, cooling]', '[packing, ¤coling]', changed('batch: 6', 'batch: ¤none', FLOW)),
      'expected a whole number',
      'did you mean "cooling"?',
    );
  });
});
