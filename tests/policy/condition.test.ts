import { describe, expect, it } from 'vitest';
import { blanks, gaugedCell, ran, small } from '../line/small-line.ts';
import { told } from './told.ts';

/** Takes a blank at 0, 10, 20, ... s. */
const only = (stock: string) => `
stock:
  blank: { ${stock} }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
`;

describe('a stock level', () => {
  it('below a bound holds until there is enough', () => {
    // 4, 3, 2, 1 are left from 0, 10, 20, 30 s on; ordered at 30 s, 5 more come at 45 s.
    const { holds } = told(
      only('on-hand: 5, reorder-at: 1, order: 5, lead-time: 15 s'),
      'only',
      '{ stock: blank, below: 3, until: 5 }',
      59,
    );
    expect(holds).toEqual([
      [0, false],
      [20, true],
      [45, false],
    ]);
  });

  it('above a bound holds until there is little', () => {
    // One is left at 0 s, none at 10 s; 5 come at 15 s, 4, 3, 2, 1 and 0 are left from 20, 30, 40, 50 and 60 s on; 5 come at 65 s.
    const { holds } = told(
      only('on-hand: 2, reorder-at: 1, order: 5, lead-time: 15 s'),
      'only',
      '{ stock: blank, above: 4, until: 2 }',
      69,
    );
    expect(holds).toEqual([
      [0, false],
      [15, true],
      [40, false],
      [65, true],
    ]);
  });
});

describe('a buffer level', () => {
  // Five parts come at 10, 20, 30, 40 and 50 s and are taken at 10, 36, 62, 88 and 114 s.
  const body = (buffer: string) => `
stock:
  blank: { on-hand: 5 }
stations:
  first: { does: work, takes: blank, cycle: 10 s, to: second }
  second: { does: work, buffer: ${buffer}, cycle: 26 s, to: good }
`;

  it('above a bound holds until few wait', () => {
    // 1, 2, 1, 2, 3, 2, 1, 0 wait from 20, 30, 36, 40, 50, 62, 88, 114 s on.
    expect(told(body('5'), 'second', '{ buffer: second, above: 2, until: 1 }', 130).holds).toEqual([
      [0, false],
      [50, true],
      [88, false],
    ]);
  });

  it('below a bound holds from the start on, until enough wait', () => {
    // What comes at 10 s is taken at once, so that nobody sees it wait.
    expect(told(body('5'), 'second', '{ buffer: second, below: 1 }', 130).holds).toEqual([
      [0, true],
      [20, false],
      [114, true],
    ]);
    expect(told(body('5'), 'second', '{ buffer: second, below: 1, until: 3 }', 130).holds).toEqual([
      [0, true],
      [50, false],
      [114, true],
    ]);
  });

  it('counts what travels on a conveyor', () => {
    // Taken 7 s after they came, at 17, 43, 69, ...: one part from 10 s, two from 20 s only if the first were still there.
    expect(
      told(body('{ places: 4, transit: 7 s }'), 'second', '{ buffer: second, above: 0 }', 40).holds,
    ).toEqual([
      [0, false],
      [10, true],
      [17, false],
      [20, true],
    ]);
  });
});

describe('a state of a station', () => {
  it('is known once the line has started, so that nothing acts on what it only seems to be before', () => {
    const drawn = (when: string) =>
      ran(
        small(
          '99 s',
          `${only('on-hand: 50, reserve: 2')}
policies:
  p: [{ do: draw-on-reserve, stock: blank, when: ${when} }]`,
        ),
        'p',
      ).did!.drawn_blank_pieces;
    // It works from 0 s on.
    const working = '{ station: only, is: working }';
    expect(drawn(`{ not: ${working} }`)).toBe(0);
    expect(drawn(`{ not: { any: [${working}, { from: 1 h }] } }`)).toBe(0);
    expect(drawn(`{ all: [{ not: ${working} }, { to: 1 h }] }`)).toBe(0);
    expect(drawn('{ station: only, is: starved }')).toBe(0);
    expect(drawn('{ not: { station: only, is: starved } }')).toBe(2);
    expect(drawn(`{ all: [${working}, { to: 1 h }] }`)).toBe(2);
  });

  const body = (machines = 1) => `${blanks(`
  first: { does: work, takes: blank, machines: ${machines}, cycle: 10 s, to: second }
  second: { does: work, buffer: 5, cycle: 4 s, to: good }`)}
disturbances:
  halt: { disturbs: station, station: first, at: 15 s, for: 40 s, cycle: resumes }
`;

  it('holds while it lasts', () => {
    expect(told(body(), 'first', '{ station: first, is: down }', 99).holds).toEqual([
      [0, false],
      [15, true],
      [55, false],
    ]);
  });

  it('holds once it has lasted so long', () => {
    expect(told(body(), 'first', '{ station: first, is: down, for: 30 s }', 99).holds).toEqual([
      [0, false],
      [45, true],
      [55, false],
    ]);
    expect(told(body(), 'first', '{ station: first, is: down, for: 41 s }', 99).holds).toEqual([[0, false]]);
  });

  it('counts from the start of the state, each time anew', () => {
    // Idle to 10 s, from 14 s on, and after the parts of 60, 70 s from 64 and 74 s on.
    expect(told(body(), 'first', '{ station: second, is: starved, for: 8 s }', 79).holds).toEqual([
      [0, false],
      [8, true],
      [10, false],
      [22, true],
      [60, false],
    ]);
  });

  it('takes several states for one', () => {
    expect(told(body(), 'first', '{ station: second, is: [starved, working], for: 70 s }', 99).holds).toEqual(
      [
        [0, false],
        [70, true],
      ],
    );
  });

  it('is that of all machines, or of so many', () => {
    // Two machines finish at 10 s and begin together; the second station works on their parts from 10 to 18 s, alone.
    const two = body().replace('buffer: 5', 'machines: 2, buffer: 5');
    expect(told(two, 'first', '{ station: second, is: working }', 50).holds).toEqual([[0, false]]);
    expect(told(two, 'first', '{ station: second, is: working, machines: 1 }', 50).holds).toEqual([
      [0, false],
      [10, true],
      [14, false],
    ]);
    const both = body(2).replace('buffer: 5', 'machines: 2, buffer: 5');
    expect(told(both, 'first', '{ station: second, is: working }', 50).holds).toEqual([
      [0, false],
      [10, true],
      [14, false],
    ]);
  });
});

describe('an amount of the demand', () => {
  const body = (cycle: number) => `${blanks(`
  only: { does: work, takes: blank, cycle: ${cycle} s, to: good }`)}
demand: { every: 25 s, due-after: 20 s, finished-goods: { most: 3 } }
`;

  it('of finished goods', () => {
    // Made at 12, 24, 36, 48, 60 s, ordered at 25, 50, 75 s: 1, 2, 1, 2, 3, 2, 3. That of 72 s finds no room until 75 s.
    expect(told(body(12), 'only', '{ demand: finished-goods, above: 2 }', 80).holds).toEqual([
      [0, false],
      [48, true],
      [50, false],
      [60, true],
    ]);
  });

  it('of open and late orders', () => {
    // Made at 40, 80, 120 s; ordered at 25, 50, 75, 100 s and due at 45, 70, 95 s.
    expect(told(body(40), 'only', '{ demand: open-orders, above: 1 }', 110).holds).toEqual([
      [0, false],
      [75, true],
      [80, false],
      [100, true],
    ]);
    expect(told(body(40), 'only', '{ demand: late-orders, above: 0 }', 110).holds).toEqual([
      [0, false],
      [70, true],
      [80, false],
      [95, true],
    ]);
  });
});

describe('a time', () => {
  const body = blanks('  only: { does: work, takes: blank, cycle: 10 s, to: good }');

  it('of the run', () => {
    expect(told(body, 'only', '{ from: 30 s, to: 50 s }', 99).holds).toEqual([
      [0, false],
      [30, true],
      [50, false],
    ]);
    expect(told(body, 'only', '{ to: 50 s }', 99).holds).toEqual([
      [0, true],
      [50, false],
    ]);
    expect(told(body, 'only', '{ from: 0 s }', 99).holds).toEqual([[0, true]]);
  });

  it('of a calendar', () => {
    const HOUR = 3600;
    const calendar = (begins: string) => `${body}
calendars: { day: { shifts: [{ days: [mon], begins: ${begins}, lasts: 2 h, breaks: [{ after: 30 min, lasts: 6 min }] }] } }`;
    const changes = (begins: string) =>
      told(calendar(begins), 'only', '{ calendar: day }', 8 * HOUR)
        .holds.map(([at, holds]) => [at / HOUR, holds])
        // It may be told at the start twice.
        .filter(([, holds], i, all) => holds !== all[i - 1]?.[1]);
    expect(changes('3 h')).toEqual([
      [0, false],
      [3, true],
      [3.5, false],
      [3.6, true],
      [5, false],
    ]);
    expect(changes('0 h')).toEqual([
      [0, true],
      [0.5, false],
      [0.6, true],
      [2, false],
    ]);
  });
});

// A tray every 10 s, gauged by 11, 21, ... s. Those loaded at 100 to 140 s, gauged by 111 to 151 s, are 1 mm too large.
const cell = `${gaugedCell({ rim: 'tolerance: 0.5 mm' })}
disturbances:
  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 95 s, for: 50 s }
`;

describe('readings', () => {
  it('beyond a bound hold until they are back', () => {
    expect(told(cell, 'forming', '{ at: gauging, of: rim, above: 100.6 mm }', 200).holds).toEqual([
      [0, false],
      [111, true],
      [161, false],
    ]);
    expect(told(cell, 'forming', '{ at: gauging, of: rim, below: 100.6 mm }', 200).holds).toEqual([
      [0, false],
      [11, true],
      [111, false],
      [161, true],
    ]);
  });

  it('are taken together in means', () => {
    // Of 31 and 41 s, ..., of 111 and 121, 131 and 141, 151 and 161 s: the last is half a millimetre too large.
    expect(told(cell, 'forming', '{ at: gauging, of: rim, above: 100.6 mm, mean-of: 2 }', 200).holds).toEqual(
      [
        [0, false],
        [121, true],
        [161, false],
      ],
    );
  });
});

describe('a watch', () => {
  it('of sights signals at so many, and then counts anew', () => {
    const { holds, signals } = told(
      cell,
      'forming',
      '{ at: gauging, sees: off-limits, count: 2, of-last: 4 }',
      200,
    );
    expect(holds).toEqual([[0, false]]);
    expect(signals).toEqual([121, 141]);
  });

  it('of sights signals at so few of so many', () => {
    expect(
      told(cell, 'forming', '{ at: gauging, sees: off-limits, at-most: 0, of-last: 4 }', 200).signals,
    ).toEqual([41, 81, 191]);
  });

  it('of a chart signals as the chart does', () => {
    const chart = '{ at: gauging, of: rim, chart: shewhart, sigma: 0.3 mm, limit: 3 }';
    expect(told(cell, 'forming', chart, 200).signals).toEqual([111, 121, 131, 141, 151]);
  });
});

describe('several conditions', () => {
  it('hold together, or one of them, or not', () => {
    const two = '[{ from: 10 s, to: 40 s }, { from: 30 s, to: 60 s }]';
    const body = blanks('  only: { does: work, takes: blank, cycle: 10 s, to: good }');
    const at = (when: string) => told(body, 'only', when, 99).holds.slice(1);
    expect(at(`{ all: ${two} }`)).toEqual([
      [30, true],
      [40, false],
    ]);
    expect(at(`{ any: ${two} }`)).toEqual([
      [10, true],
      [60, false],
    ]);
    expect(at(`{ any: [{ all: ${two} }, { from: 80 s }] }`)).toEqual([
      [30, true],
      [40, false],
      [80, true],
    ]);
    expect(told(body, 'only', '{ not: { from: 10 s, to: 40 s } }', 99).holds).toEqual([
      [0, true],
      [10, false],
      [40, true],
    ]);
    // From the start on.
    expect(told(body, 'only', '{ all: [{ to: 40 s }, { not: { from: 50 s } }] }', 99).holds).toEqual([
      [0, true],
      [40, false],
    ]);
  });

  it('that change at one instant are looked at together', () => {
    const body = blanks('  only: { does: work, takes: blank, cycle: 10 s, to: good }');
    expect(told(body, 'only', '{ all: [{ from: 20 s }, { to: 20 s }] }', 99).holds).toEqual([[0, false]]);
    expect(told(body, 'only', '{ any: [{ to: 20 s }, { from: 20 s }] }', 99).holds).toEqual([[0, true]]);
  });

  it('say once how it is at first, so that nothing acts on what does not hold', () => {
    // A reserve of two would be drawn at the start, and stay drawn.
    const text = `${only('on-hand: 9, reserve: 2')}
policies:
  p: [{ do: draw-on-reserve, stock: blank, when: { not: { all: [{ from: 0 s }, { stock: blank, below: 10 }] } } }]`;
    expect(ran(small('99 s', text), 'p').did).toEqual({ drawn_blank_pieces: 0 });
  });

  it('signal while all the others hold, or when any signals', () => {
    const chart = '{ at: gauging, of: rim, chart: shewhart, sigma: 0.3 mm, limit: 3 }';
    expect(told(cell, 'forming', `{ all: [${chart}, { from: 115 s, to: 145 s }] }`, 200).signals).toEqual([
      121, 131, 141,
    ]);
    const any = told(cell, 'forming', `{ any: [${chart}, { from: 190 s }] }`, 200);
    expect(any.signals).toEqual([111, 121, 131, 141, 151]);
    expect(any.holds).toEqual([
      [0, false],
      [190, true],
    ]);
  });
});
