import { describe, expect, it } from 'vitest';
import { idealLine } from '../../src/line/ideal.ts';
import { checkJson } from '../../src/report/check-json.ts';
import { checkText } from '../../src/report/check-text.ts';
import { widthOf } from '../../src/report/columns.ts';
import { lineDrawing } from '../../src/report/line-drawing.ts';
import { parseScenario } from '../../src/scenario/parse.ts';

/** A scenario from its sections below `run`; one policy. */
function scenarioOf(body: string) {
  const head = 'mendline: 1\ntitle: T\nabout: Invented.\nrun: { warm-up: 0 s, length: 1 h, seeds: 1 }\n';
  return parseScenario(`${head}${body}\npolicies: { carry on: [] }\n`, 'test.yaml');
}

const flat = (text: string) => text.replace(/\s+/g, ' ');
function explained(body: string): string {
  const scenario = scenarioOf(body);
  return flat(checkText(scenario, idealLine(scenario), 80));
}

const BLANKS = 'stock: { blank: { unlimited: true } }\nstations:\n';
const plain = (extra = '') =>
  `${BLANKS}  press: { does: work, takes: blank, cycle: 10 s, to: good${extra && `, ${extra}`} }\n`;

const RICH = `stations:
  incoming: { does: arrive, every: { distribution: exponential, mean: 30 s }, when-full: lost,
    to: { by: share, routes: { washing: 62.5 %, drying: 37.5 % } } }
  washing: { does: work, buffer: 4, machines: 3, batch: 4, cycle: 60 s, to: { by: priority, routes: [drying, packing] } }
  drying: { does: work, buffer: { places: 6, transit: 45 s }, machines: 2, cycle: 50 s,
    to: { by: state, routes: [packing, checking] } }
  packing: { does: work, buffer: unlimited, cycle: 12 s, to: good }
  checking: { does: work, buffer: 3, cycle: 12 s, to: { by: share, routes: { good: 90 %, drying: 10 % } } }`;

describe('lineDrawing', () => {
  it('draws every way of every branch once, and ends a circle where it comes back', () => {
    expect(lineDrawing(scenarioOf(RICH), 80)).toEqual([
      '  incoming (about 30 s apart, lost when full)',
      '    > 62.5 %: (4) washing x3, 4 at a time > 1st: (conveyor of 6, 45 s) drying x2',
      '    > freest: (unlimited) packing > good',
      '  incoming > 37.5 %: drying',
      '  washing > 2nd: packing',
      '  drying > freest: (3) checking > 90 %: good',
      '  checking > 10 %: drying',
      '  (4): 4 places for parts that wait; x3: 3 machines; 62.5 %: so many of the',
      '  parts go this way; 1st, 2nd: the first way that has room; freest: the way to',
      '  the station that is up and has fewest parts',
    ]);
  });

  it('explains no sign that it does not use', () => {
    expect(lineDrawing(scenarioOf(plain()), 80)).toEqual(['  blank > press > good']);
  });

  it('draws each of several sources', () => {
    const two = `${BLANKS}  a: { does: work, takes: blank, cycle: 9 s, to: c }
  b: { does: arrive, every: 9 s, to: c }
  c: { does: work, buffer: unlimited, cycle: 4 s, to: good }`;
    expect(lineDrawing(scenarioOf(two), 80)).toEqual([
      '  blank > a > (unlimited) c > good',
      '  b (9 s apart) > c',
    ]);
  });

  it('breaks between stations and never sticks out', () => {
    const names = Array.from({ length: 12 }, (_, i) => `station with a long name ${'x'.repeat(i * 8)}${i}`);
    const chain = names.map(
      (name, i) =>
        `  ${name}: { does: work, ${i ? 'buffer: 2' : 'takes: blank'}, cycle: 1 s, to: ${names[i + 1] ?? 'good'} }`,
    );
    const lines = lineDrawing(scenarioOf(`${BLANKS}${chain.join('\n')}`), 80);
    for (const line of lines) expect(widthOf(line), line).toBeLessThanOrEqual(80);
  });
});

describe('checkText', () => {
  it('tells what a station does besides its cycles', () => {
    const text = explained(
      plain(
        'speed: 80 %, handling: { load: 3 s, unload: 2 s }, while-down: nothing, ' +
          'set-ups: { tool: { cycles: 500, takes: 8 min } }, warm-up: { after: 30 min, takes: 10 min }, ' +
          'maintenance: { weekly: { every: 40 h, counted: clock, takes: 1 h } }',
      ),
    );
    expect(text).toContain(
      '"press": works at 80.0 % of its speed; loaded in 3 s and unloaded in 2 s by itself;',
    );
    expect(text).toContain('set-up "tool" after 500 cycles, takes 8 min;');
    expect(text).toContain('maintenance "weekly" after 40 h by the clock, takes 1 h;');
    expect(text).toContain('warms up in 10 min when it has not worked for more than 30 min;');
    expect(text).toContain('while down it does not even pass on what is finished');
  });

  const read = (
    reader: string,
  ) => `${BLANKS}  press: { does: form, takes: blank, makes: tray, per-sheet: 1, cycle: 10 s, to: marking }
  marking: { does: mark, buffer: 4, cycle: 2 s, takes-hold: 99 %, grades: { A: 90 %, C: 10 % }, to: gauging }
  gauging: { does: gauge, buffer: 4, cycle: 2 s, every: 1, measures: {}, off-limits: pass, reader: { ${reader} }, to: good }
parts: { tray: { features: {} } }
disturbances:
  poor: { disturbs: marks, station: marking, grades: { C: 62.5 %, F: 37.5 % }, at: 10 min, for: 20 min }
  poor and few: { disturbs: marks, station: marking, takes-hold: 60 %, grades: { D: 100 % }, at: 10 min, for: 20 min }`;

  it('tells of attempts to read, of marking anew and of grades that a disturbance brings', () => {
    const text = explained(
      read('reads: 98 %, tries: 3, retry: 0.5 s, unread: { re-mark: marking, limit: 2, afterwards: scrap }'),
    );
    expect(text).toContain(
      '"gauging": tries up to 3 times to read a mark, 0.5 s a further time; ' +
        'sends a part that is not read to "marking" to be marked anew, 2 times at most; then it is scrapped',
    );
    expect(text).toContain('scrap, rework, marking anew or disturbances.');
    expect(text).toContain('poor: marks at "marking" are graded 62.5 % C, 37.5 % F, from 10 min');
    expect(text).toContain('poor and few: only 60 % of marks take at "marking", graded 100 % D, from 10 min');
    expect(explained(read('reads: 98 %, unread: { re-mark: marking }'))).toContain(
      '"gauging": sends a part that is not read to "marking" to be marked anew, once at most; then it passes on anonymously',
    );
    expect(explained(read('reads: 98 %, unread: pass'))).not.toContain('"gauging":');
  });

  it('tells each crew with whom it serves, and each way of breaking down with what becomes of the cycle', () => {
    const text = explained(`${plain(
      'handling: { by: robot, load: 3 s }, breakdowns: { jam: { every: 5 h, counted: working, repair: 9 min, cycle: scraps, crew: fitter } }, ' +
        'set-ups: { tool: { cycles: 500, takes: 8 min, crew: fitter } }',
    )}crew:
  fitter: { number: 2, move: 60 s }
  robot: { number: 1 }`);
    expect(text).toContain(
      '"fitter" (2): first come, first served; moves from station to station in 60 s; ' +
        'repairs "press" (jam); sets up "press" (tool)',
    );
    expect(text).toContain('"robot" (1): first come, first served; loads and unloads "press"');
    expect(text).toContain(
      '"press" breaks down (jam): after 5 h of work, repaired in 9 min by "fitter"; its part is scrapped',
    );
  });

  it('says that what is finished after a shift comes on top of the ideal rate, where anything is', () => {
    const hours = `calendars:
  short: { shifts: [{ days: [mon], begins: 8 h, lasts: 1 h }] }`;
    const text = (end: string) => explained(`${plain(`calendar: short, shift-end: ${end}`)}${hours}`);
    expect(text('finishes')).toContain(
      'What is finished after the end of a shift comes on top; what else is left out makes the line slower.',
    );
    expect(text('resumes')).not.toContain('comes on top');
    expect(text('resumes')).toContain('What is left out makes the line slower.');
  });

  it('tells calendars in days and hours, shifts past midnight and several days in a row included', () => {
    const text = explained(`${plain('calendar: nights, shift-end: scraps')}calendars:
  nights:
    shifts:
      - { days: [fri, mon, wed, thu], begins: 22 h, lasts: 8 h, breaks: [{ after: 3 h, lasts: 15 min }] }
      - { days: [sun], begins: 0 s, lasts: 24 h }
      - { days: [sat], begins: 28900 s, lasts: 1 h }`);
    expect(text).toContain(
      '"nights" (3 shifts): mon, wed-fri 22:00-06:00, break 01:00-01:15; sun 00:00-24:00; sat 08:01:40-09:01:40; for "press"',
    );
    expect(text).toContain('the end of a shift interrupts a cycle and scraps its part');
    expect(text).toContain('Calendars count by the whole week');
  });

  it('tells carriers and orders, and that the ideal rate leaves them out', () => {
    const text = explained(`${plain()}carriers: { pallet: { number: 6, from: press, return: 20 s } }
demand: { every: 4 min, pieces: 12, due-after: 2 h, finished-goods: { at-start: 5, most: 90 } }`);
    expect(text).toContain(
      '"pallet" (6): one a part from its loading at "press" until it leaves the line, back after 20 s',
    );
    expect(text).toContain('orders 4 min apart, each for 12 good assemblies, due 2 h later');
    // 12 pieces in 4 min; the press makes one in 10 s.
    expect(text).toContain('due 2 h later; 180 /h in the long run - finished goods');
    expect(text).toContain('finished goods: 5 at the start, room for 90');
    expect(text).toContain(
      'without waiting (for parts, room, carriers, orders), scrap, rework or disturbances',
    );
  });

  it('says when orders ask for more than the line could make', () => {
    // 366 in an hour, of which the press makes 360.
    const text = explained(
      `${plain()}demand: { every: 1 h, pieces: 366, due-after: 2 h, finished-goods: { at-start: 5, most: 400 } }`,
    );
    expect(text).toContain('366 /h in the long run, more than the ideal rate: orders will fall behind');
  });

  it('tells the priorities of the calls for a crew that goes by them', () => {
    const text = explained(
      `${plain(
        'handling: { by: crew, load: 3 s, priority: 4 }, breakdowns: { jam: { every: 5 h, counted: working, repair: 9 min, cycle: scraps, crew: crew } }, ' +
          'set-ups: { tool: { cycles: 500, takes: 8 min, crew: crew, priority: 2 } }',
      )}crew: { crew: { number: 1, serves: priority } }`,
    );
    expect(text).toContain(
      '"crew" (1): served by priority, 1 first; repairs "press" (jam: priority 1); ' +
        'sets up "press" (tool: priority 2); loads and unloads "press" (priority 4)',
    );
  });

  it.each([
    ['59 min', false],
    ['60 min', true],
    ['{ distribution: uniform, low: 59 min, high: 80 min }', false],
    ['{ distribution: triangular, low: 61 min, mode: 70 min, high: 80 min }', true],
    ['{ distribution: exponential, mean: 9 h }', false],
  ])('says of a disturbance at %s in a run of 1 h whether it comes too late: %s', (at, late) => {
    const text = explained(
      `${plain()}disturbances: { stop: { disturbs: station, station: press, at: ${at}, for: 5 min } }`,
    );
    expect(text).toContain('stop: "press" stands still');
    expect(text.includes('that is after the end of the run, so it never happens')).toBe(late);
  });

  it('says nothing of what a plain line has not', () => {
    const text = explained(plain());
    for (const word of ['Crews', 'Carriers', 'Calendars', 'Orders', 'besides', 'Ways']) {
      expect(text).not.toContain(word);
    }
    expect(text).toContain('without waiting (for parts, room), scrap, rework or disturbances');
  });

  it('says how ways by priority and by state count in the ideal rate', () => {
    expect(explained(RICH)).toContain(
      'Ways chosen by priority or state count as if each got as much as it can',
    );
  });

  it.each([60, 79, 80])('fits %d columns with every section', (width) => {
    const scenario = scenarioOf(RICH);
    for (const line of checkText(scenario, idealLine(scenario), width).split('\n')) {
      expect(widthOf(line), line).toBeLessThanOrEqual(width);
    }
  });
});

describe('checkJson', () => {
  const json = (body: string) => {
    const scenario = scenarioOf(body);
    const made = checkJson({ scenario, ideal: idealLine(scenario), file: 'test.yaml', sha256: 'ab' });
    return JSON.parse(JSON.stringify(made));
  };

  it('gives machines, ways and flow of each station', () => {
    const { stations } = json(RICH);
    expect(stations[1]).toMatchObject({
      station: 'washing', does: 'work', machines: 3, by: 'priority', to: ['drying', 'packing'], calendar: null,
    }); // biome-ignore format: one line reads better
    // 62.5 % of 120 an hour.
    expect(stations[1].flow_per_h).toBeCloseTo(75, 6);
  });

  it('gives crews, carriers, calendars and orders', () => {
    const made =
      json(`${plain('calendar: early, breakdowns: { jam: { every: 5 h, counted: working, repair: 9 min, cycle: resumes, crew: fitter } }')}crew: { fitter: { number: 2, calendar: early } }
carriers: { pallet: { number: 6, from: press } }
calendars: { early: { shifts: [{ days: [mon], begins: 6 h, lasts: 8 h }] } }
demand: { every: 4 min, due-after: 2 h, finished-goods: { most: 90 } }`);
    expect(made.crew).toEqual([{ name: 'fitter', number: 2, serves: 'first-come', calendar: 'early' }]);
    expect(made.carriers).toEqual([{ name: 'pallet', number: 6, from: 'press', to: null }]);
    expect(made.calendars).toEqual([
      { name: 'early', shifts: 'mon 06:00-14:00', working_share: expect.closeTo(8 / 168, 12) },
    ]);
    expect(made.demand).toEqual({
      mean_every_s: 240,
      pieces: 1,
      due_after_s: 7200,
      finished_goods: { at_start: 0, most: 90 },
    });
    expect(json(plain()).demand).toBeNull();
  });

  // I02: W. J. Hopp and M. L. Spearman, Factory Physics, chapter 2: a base stock of 15 for 10 in a lead time.
  it('gives the first estimate of each limited stock', () => {
    const stock =
      'stock: { blank: { on-hand: 15, up-to: 15, lead-time: 100 s, when-short: backorders } }\nstations:\n';
    expect(json(plain().replace(BLANKS, stock)).stocks).toEqual([
      {
        ...{ stock: 'blank', on_hand: 15, demand_per_h: expect.closeTo(360, 9), failures_per_h: 0 },
        ...{ fill_rate: expect.closeTo(0.916542, 6), assumes: 'poisson' },
      },
    ]);
    expect(json(plain()).stocks).toEqual([]);
  });
});
