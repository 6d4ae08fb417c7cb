import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { routesOf } from '../../src/scenario/routes.ts';
import { isSource, type SpecOf, type StationSpec } from '../../src/scenario/stations.ts';
import { FLOW } from './flow-sample.ts';
import { changed, SOUND } from './sample.ts';

const HOUR = 3600;
const constant = (value: number) => ({ distribution: 'constant', value });
const read = (text = FLOW) => parseScenario(text, 'flow.yaml');

function station<Does extends StationSpec['does']>(name: string, _: Does, text = FLOW): SpecOf<Does> {
  return read(text).stations.find((one) => one.name === name) as SpecOf<Does>;
}

/** What every station has unless its scenario says otherwise. */
const DEFAULTS = {
  machines: 1,
  speed: 1,
  setUps: [],
  maintenance: [],
  breakdowns: [],
  whileDown: 'unloads',
  shiftEnd: 'finishes',
};

describe('a station', () => {
  it('has its machines, speed, handling, tasks and breakdowns with times in seconds', () => {
    expect(station('milling', 'work')).toEqual({
      name: 'milling',
      does: 'work',
      cycle: { distribution: 'uniform', low: 18, high: 36 },
      buffer: { places: 12, transit: 0, spacing: 0 },
      batch: 1,
      machines: 3,
      speed: 0.9,
      handling: { by: 'robot', load: 3, unload: 2, priority: 1 },
      setUps: [
        { name: 'tool change', cycles: 500, takes: constant(300), crew: 'fitter', priority: 2 },
        { name: 'clean', every: constant(4 * HOUR), counted: 'working', takes: constant(180), priority: 1 },
      ],
      maintenance: [
        {
          ...{ name: 'weekly', every: constant(40 * HOUR), counted: 'clock', takes: constant(HOUR) },
          ...{ crew: 'fitter', priority: 1 },
        },
      ],
      breakdowns: [
        {
          ...{ name: 'jam', every: { distribution: 'exponential', mean: HOUR }, counted: 'working' },
          ...{ repair: constant(240), cycle: 'scraps', crew: 'fitter', priority: 3 },
        },
        {
          ...{ name: 'trip', every: constant(2 * HOUR), counted: 'clock' },
          ...{ repair: constant(10), cycle: 'restarts', priority: 1 },
        },
      ],
      whileDown: 'nothing',
      calendar: 'two shifts',
      shiftEnd: 'resumes',
      to: {
        by: 'share',
        routes: [
          { to: 'left oven', share: 0.6 },
          { to: 'right oven', share: 0.4 },
        ],
      },
    });
  });

  it('without a word about them is one machine that works always, at full speed, and unloads while down', () => {
    expect(station('cooling', 'work')).toEqual({
      ...DEFAULTS,
      ...{ name: 'cooling', does: 'work', cycle: constant(7), batch: 1 },
      buffer: { places: 0, transit: 0, spacing: 0 },
      to: { by: 'only', routes: [{ to: 'packing', share: 1 }] },
    });
    for (const one of read(SOUND).stations.filter(({ name }) => name !== 'assembly'))
      expect(one, one.name).toMatchObject(DEFAULTS);
  });

  it('where parts arrive has what the others have, and its interval as its cycle', () => {
    const incoming = station('incoming', 'arrive');
    expect(incoming).toEqual({
      ...DEFAULTS,
      ...{ name: 'incoming', does: 'arrive', whenFull: 'lost', calendar: 'two shifts', shiftEnd: 'resumes' },
      cycle: { distribution: 'exponential', mean: 40 },
      to: { by: 'only', routes: [{ to: 'milling', share: 1 }] },
    });
    const patient = changed('    when-full: lost\n', '', FLOW);
    expect(station('incoming', 'arrive', patient).whenFull).toBe('waits');
  });

  it('starts parts when it forms, takes from stock or lets them arrive', () => {
    const sources = [...read().stations, ...read(SOUND).stations].filter(isSource).map(({ name }) => name);
    expect(sources).toEqual(['incoming', 'forming']);
    const fed = '  packing: { does: work, takes: film, cycle: 3 s, to: good }\n';
    const head = SOUND.slice(0, SOUND.indexOf('stock:'));
    const alone = `${head}stock:\n  film: { unlimited: true }\nstations:\n${fed}policies:\n  carry on: []\n`;
    expect(read(alone).stations.map(isSource)).toEqual([true]);
  });

  it('warms up after it stood, and works on a batch from a conveyor', () => {
    expect(station('left oven', 'work')).toMatchObject({
      warmUp: { after: 1800, takes: constant(480) },
      batch: 4,
      buffer: { places: 16, transit: 30, spacing: 2 },
    });
    expect(station('right oven', 'work').buffer).toEqual({ places: 8, transit: 40, spacing: 0 });
    expect(station('packing', 'work').buffer).toEqual({ places: Infinity, transit: 0, spacing: 0 });
    expect(station('packing', 'work').handling).toEqual({ by: 'robot', load: 0, unload: 4, priority: 1 });
  });

  it('keeps the order of its ways', () => {
    expect(station('left oven', 'work').to).toEqual({
      by: 'priority',
      routes: [
        { to: 'cooling', share: 1 },
        { to: 'packing', share: 1 },
      ],
    });
    expect(station('right oven', 'work').to.by).toBe('state');
    expect(read().stations.map(routesOf)).toEqual([
      ['milling'],
      ['left oven', 'right oven'],
      ['cooling', 'packing'],
      ['packing', 'cooling'],
      ['packing'],
      ['good'],
    ]);
  });
});

describe('what stations share', () => {
  it('are crews with who is served first and how long they move', () => {
    expect(read().crew).toEqual([
      { name: 'fitter', number: 2, serves: 'priority', move: 0, moves: [], calendar: 'two shifts' },
      {
        ...{ name: 'robot', number: 1, serves: 'nearest', move: 4 },
        moves: [{ between: ['milling', 'packing'], takes: 9 }],
      },
    ]);
    const plain = changed('serves: nearest, move: 4 s', 'move: 4 s', FLOW);
    expect(read(plain).crew[1]!.serves).toBe('first-come');
  });

  it('are carriers from one station to another, or to the end of the line', () => {
    expect(read().carriers).toEqual([
      { name: 'tray', number: 20, from: 'milling', to: 'packing', return: 25 },
      { name: 'tag', number: 60, from: 'milling', return: 0 },
    ]);
  });

  it('are calendars in seconds from midnight', () => {
    const days = ['mon', 'tue', 'wed', 'thu', 'fri'];
    expect(read().calendars).toEqual([
      {
        name: 'two shifts',
        shifts: [
          {
            ...{ days, begins: 6 * HOUR, lasts: 8 * HOUR },
            breaks: [
              { after: 3 * HOUR, lasts: 900 },
              { after: 6 * HOUR, lasts: 600 },
            ],
          },
          { days, begins: 14 * HOUR, lasts: 8 * HOUR, breaks: [] },
          { days: ['sat'], begins: 22 * HOUR, lasts: 6 * HOUR, breaks: [] },
        ],
      },
    ]);
  });

  it('is a demand, if there is one', () => {
    expect(read().demand).toEqual({
      every: { distribution: 'exponential', mean: 1200 },
      ...{ pieces: 5, dueAfter: 2 * HOUR, finishedGoods: { atStart: 10, most: 200 } },
    });
    const least = changed('  pieces: 5\n', '', changed('at-start: 10, ', '', FLOW));
    expect(read(least).demand).toMatchObject({ pieces: 1, finishedGoods: { atStart: 0 } });
  });

  it('may all be left out, as the stock may', () => {
    expect(read(SOUND)).toMatchObject({ crew: [], carriers: [], calendars: [], demand: null });
    expect(read().stocks).toEqual([]);
  });
});

describe('sound besides', () => {
  it.each([
    ['shares in odd parts', '60 %, right oven: 40 %', '33.3 %, right oven: 66.7 %'],
    [
      'a way back that a share leaves again',
      'cycle: 7 s, to: packing',
      'cycle: 7 s, to: { by: share, routes: { left oven: 10 %, packing: 90 % } }',
    ],
    ['good among the ways', 'routes: [packing, cooling]', 'routes: [packing, good, cooling]'],
    [
      'a belt that is just as quick as its spacing allows',
      '{ places: 8, transit: 40 s }',
      '{ places: 6, transit: 1 ms, spacing: 0.2 ms }',
    ],
    ['a shift of a whole day', 'begins: 22 h, lasts: 6 h', 'begins: 0 h, lasts: 24 h'],
    [
      'a shift over the end of the week',
      'days: [sat], begins: 22 h, lasts: 6 h',
      'days: [sun], begins: 23 h, lasts: 7 h',
    ],
    ['breaks that follow one another', 'after: 6 h, lasts: 10 min', 'after: 3.25 h, lasts: 10 min'],
    ['a break at the end of its shift', 'after: 6 h, lasts: 10 min', 'after: 470 min, lasts: 10 min'],
    ['carriers that just fill a batch', 'number: 20, from', 'number: 6, from'],
    ['a batch as large as its buffer', 'batch: 6', 'batch: 8'],
    ['a life that may just reach a cycle', 'trip: { every: 2 h,', 'trip: { every: 20 s,'],
    ['pieces that just fit the finished goods', 'pieces: 5', 'pieces: 200'],
  ])('%s', (_, from, to) => {
    expect(() => read(changed(from, to, FLOW))).not.toThrow();
  });
});
