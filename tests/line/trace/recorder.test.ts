import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/experiment/simulate.ts';
import { traced } from '../../../src/experiment/traced.ts';
import { TraceTooLongError } from '../../../src/line/trace/log.ts';
import type { PartEvent } from '../../../src/line/trace/part-events.ts';
import { Recorder } from '../../../src/line/trace/recorder.ts';
import type { Trace } from '../../../src/line/trace/trace.ts';
import { blanks, small } from '../small-line.ts';
import { expectAgreement } from './replayed.ts';

/** What happened to a part, each event without the part's number. */
const storyOf = ({ events }: Trace, number: number) =>
  events
    .filter(({ part }) => part === number)
    .map(({ part: _, ...event }) => event as Omit<PartEvent, 'part'>);

const of = (length: string, body: string, policy = 'carry on') => {
  const scenario = small(length, body);
  const { trace, outcome } = traced(scenario, policy, 1);
  expect(outcome).toEqual(simulate(scenario, policy, 1));
  expectAgreement(trace, outcome);
  return trace;
};

/**
 * A part is begun every 10 s; `second` takes 12 s and has one place in front. It gets part 1 at 10 s and part 2, which
 * waits from 20 s, at 22 s; part 3 waits from 30 s to 34 s, part 4 from 40 s to 46 s, part 5 from 50 s on.
 */
const two = blanks(`
  first: { does: work, takes: blank, cycle: 10 s, to: second }
  second: { does: work, buffer: 1, cycle: 12 s, to: good }
`);

const messageOf = (act: () => unknown): string => {
  try {
    act();
  } catch (error) {
    return (error as Error).message;
  }
  return '';
};

describe('what is written down of a run', () => {
  it('follows each part, worked out by hand', () => {
    const trace = of('35 s', two);
    const first = { station: 'first', machine: 'first' };
    const second = { station: 'second', machine: 'second' };
    expect(storyOf(trace, 2)).toEqual([
      {
        ...{ at: 10, kind: 'started', station: 'first' },
        from: { stock: 'blank', lot: 0, piece: 2 },
        cavity: 1,
      },
      { at: 10, kind: 'begins', ...first },
      { at: 20, kind: 'ends', ...first },
      { at: 20, kind: 'waits', station: 'second' },
      { at: 22, kind: 'begins', ...second },
      { at: 34, kind: 'ends', ...second },
      { at: 34, kind: 'good', station: 'second' },
    ]);
    expect(trace.parts.map(({ started, left }) => [started, left?.at])).toEqual([
      [0, 22],
      [10, 34],
      [20, undefined],
      [30, undefined],
    ]);
    expect(trace.parts[0]!.left).toEqual({ at: 22, as: 'good' });
  });

  it('follows the states of machines and the levels of buffers, without what lasts no time', () => {
    const [first, second] = of('50 s', two).stations;
    // Each part finds the place free, so nothing is ever blocked.
    expect(first!.machines[0]!.states).toEqual({ at: [0], value: ['working'] });
    expect(second!.machines[0]!.states).toEqual({ at: [0, 10], value: ['starved', 'working'] });
    expect(second!.buffer).toMatchObject({
      places: 1,
      level: { at: [0, 20, 22, 30, 34, 40, 46, 50], value: [0, 1, 0, 1, 0, 1, 0, 1] },
    });
  });

  it('tells which delivery pieces came with, those that are counted as a set included', () => {
    // A pin and a clip are taken at 10, 20, ... s, which nobody has to look at the stocks for before they are low.
    const trace = of(
      '61 s',
      `
stock:
  blank: { unlimited: true }
  pin: { on-hand: 4, reorder-at: 2, order: 4, lead-time: 15 s }
  clip: { on-hand: 5, reorder-at: 1, order: 9, lead-time: 5 s }
stations:
  first: { does: work, takes: blank, cycle: 10 s, to: fitting }
  fitting: { does: assemble, buffer: 3, takes: [pin, clip], cycle: 2 s, fits: [], misfit: scrap, to: good }
`,
    );
    const lots = trace.events.flatMap((event) =>
      event.kind === 'tried' ? [event.mates.map(({ stock, lot, piece }) => `${stock} ${lot}/${piece}`)] : [],
    );
    expect(lots).toEqual([
      ['pin 0/1', 'clip 0/1'],
      ['pin 0/2', 'clip 0/2'],
      ['pin 0/3', 'clip 0/3'],
      ['pin 0/4', 'clip 0/4'],
      ['pin 1/5', 'clip 0/5'],
    ]);
    const [, pin, clip] = trace.stocks;
    expect(pin!.level).toMatchObject({
      at: [0, 10, 20, 30, 35, 40, 50, 60],
      value: [4, 3, 2, 1, 5, 4, 3, 2],
    });
    expect(pin!.orders.map(({ placed, came }) => [placed, came])).toEqual([
      [20, { at: 35, pieces: 4 }],
      [60, null],
    ]);
    expect(clip!.orders.map(({ placed, came }) => [placed, came])).toEqual([[40, { at: 45, pieces: 9 }]]);
  });

  it('tells what a part read, was marked with and was tried with, apart from what it truly is', () => {
    const trace = of(
      '40 s',
      `
stock:
  sheet: { unlimited: true }
  frame: { unlimited: true, features: { groove: { nominal: 11 mm } } }
parts:
  tray: { features: { rim: { nominal: 10 mm, tolerance: 0.5 mm, made-at: forming, cavities: [0 mm, 2 mm] } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 2, cycle: 10 s, to: marking }
  marking: { does: mark, buffer: 4, cycle: 1 s, takes-hold: 100 %, to: gauging }
  gauging:
    does: gauge
    buffer: 4
    cycle: 1 s
    every: 1
    measures: { rim: { repeatability: 0 mm, bias: 0.25 mm } }
    off-limits: pass
    reader: { reads: 100 %, unread: pass }
    to: fitting
  fitting:
    does: assemble
    buffer: 4
    takes: [frame]
    cycle: 1 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0.5 mm, most: 1.5 mm }]
    misfit: scrap
    to: good
`,
    );
    const kinds = storyOf(trace, 2).filter(({ kind }) => !['waits', 'begins', 'ends'].includes(kind));
    expect(kinds).toEqual([
      {
        ...{ at: 0, kind: 'started', station: 'forming' },
        from: { stock: 'sheet', lot: 0, piece: 1 },
        cavity: 2,
      },
      { at: 12, kind: 'read', station: 'gauging', how: 'read', sent: false },
      {
        ...{ at: 13, kind: 'gauged', station: 'gauging', known: true, off: true },
        readings: [{ feature: 'rim', reading: 12.25, off: true }],
      },
      {
        ...{ at: 14, kind: 'tried', station: 'fitting', result: 'tight' },
        mates: [{ stock: 'frame', lot: 0, piece: 2 }],
      },
      { at: 14, kind: 'scrapped', station: 'fitting', why: 'tight' },
    ]);
    expect(trace.truths.filter(({ part }) => part === 2).map(({ part: _, ...truth }) => truth)).toEqual([
      { at: 10, kind: 'size', station: 'forming', feature: 'rim', size: 12 },
      { at: 12, kind: 'mark', station: 'marking', took: true, grade: null },
      { at: 14, kind: 'clearances', station: 'fitting', clearances: [-1] },
    ]);
  });

  it('tells which parts go past a station, and are kept and done there in the end', () => {
    // A part every 10 s; that of 20 s passes the wash, is packed by 23 s, kept until 25 s and washed until 29 s.
    const trace = of(
      '50 s',
      `${blanks(`
  feed: { does: work, takes: blank, cycle: 10 s, to: wash }
  wash: { does: work, buffer: 9, cycle: 4 s, to: pack }
  pack: { does: work, buffer: 9, cycle: 3 s, to: good }
`)}
policies:
  past: [{ do: skip, station: wash, later: yes, when: { from: 15 s, to: 25 s } }]
`,
      'past',
    );
    expect(storyOf(trace, 2).map(({ at, kind, station }) => [at, kind, station])).toEqual([
      [10, 'started', 'feed'],
      [10, 'begins', 'feed'],
      [20, 'ends', 'feed'],
      [20, 'passes', 'wash'],
      [20, 'waits', 'pack'],
      [20, 'begins', 'pack'],
      [23, 'ends', 'pack'],
      [23, 'kept', 'wash'],
      [25, 'waits', 'wash'],
      [25, 'begins', 'wash'],
      [29, 'ends', 'wash'],
      [29, 'good', 'wash'],
    ]);
  });

  it('tells which mates were joined to what was put aside, and which came later', () => {
    // Trays come every 10 s from 10 s on. The one frame is taken at 10 s, nine come at 55 s; pins are always there.
    const trace = of(
      '60 s',
      `
stock:
  sheet: { unlimited: true }
  pin: { unlimited: true }
  frame: { on-hand: 1, reorder-at: 0, order: 9, lead-time: 45 s, features: { groove: { nominal: 11 mm } } }
parts:
  tray: { features: { rim: { nominal: 10 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: assembly }
  assembly:
    does: assemble
    buffer: 9
    takes: [pin, frame]
    cycle: 6 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0.5 mm, most: 1.5 mm }]
    misfit: scrap
    to: good
policies:
  ahead:
    - { do: build-ahead, at: assembly, without: frame, up-to: 2, finish: 4 s, when: { stock: frame, below: 1 } }
`,
      'ahead',
    );
    const pin = { stock: 'pin', lot: 0, piece: 2 };
    const frame = { stock: 'frame', lot: 1, piece: 2 };
    const station = { station: 'assembly' };
    expect(storyOf(trace, 2).filter(({ at }) => at >= 26)).toEqual([
      { at: 26, kind: 'ends', ...station, machine: 'assembly' },
      { at: 26, kind: 'aside', ...station, mates: [pin] },
      { at: 55, kind: 'begins', ...station, machine: 'assembly' },
      { at: 59, kind: 'ends', ...station, machine: 'assembly' },
      { at: 59, kind: 'tried', ...station, mates: [pin, frame], result: 'fits' },
      { at: 59, kind: 'good', ...station },
    ]);
  });

  it('is refused, in words, for a run that has more events than are kept', () => {
    const run = () => simulate(small('35 s', two), 'carry on', 1, false, undefined, new Recorder(9));
    expect(run).toThrow(TraceTooLongError);
    expect(run).toThrow('holds at most 9 events');
  });

  it('is refused early where it would be far too long, with what it would come to', () => {
    // Seven events a part from 10 s on, and a part each 12 s: 58 a minute and a half, some 2,000 in an hour.
    const run = () => simulate(small('1 h', two), 'carry on', 1, false, undefined, new Recorder(800));
    expect(run).toThrow(TraceTooLongError);
    const [, had, hours, about] = /had (\d+) after ([\d.]+) of 1 h, .* about (\d+)/.exec(messageOf(run))!;
    expect(Number(had)).toBeLessThan(800 / 8);
    expect(Number(hours)).toBeLessThan(0.1);
    expect(Number(about)).toBeGreaterThan(1600);
  });

  it('says of a part whose lot is not accepted that this is why, whatever its own readings were', () => {
    // All parts are 1 mm too large, so that the first lot is sent away whole, and each of its sample is off limits, too.
    const trace = of(
      '61 s',
      `
stock:
  sheet: { unlimited: true }
parts:
  tray: { features: { rim: { nominal: 10 mm, tolerance: 0.5 mm, made-at: forming, cavities: [1 mm] } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 5 s, to: gauging }
  gauging:
    does: gauge
    buffer: 9
    cycle: 1 s
    acceptance: { lot: 8, aql: 6.5 %, rejected: scrap }
    measures: { rim: { repeatability: 0 mm } }
    off-limits: scrap
    to: good
`,
    );
    const gauged = trace.events.filter((event) => event.kind === 'gauged');
    expect(gauged.map(({ off }) => off)).toEqual([true, true]);
    const why = trace.events.flatMap((event) => (event.kind === 'scrapped' ? [event.why] : []));
    expect(why).toEqual(Array(8).fill('lot-rejected'));
  });

  it('tells when disturbances and responses began and ended', () => {
    const trace = of(
      '100 s',
      `${two}
disturbances:
  a stop: { disturbs: station, station: second, at: 30 s, for: 20 s }
policies:
  hold:
    - { do: hold, station: first, when: { station: second, is: down, for: 5 s } }
`,
      'hold',
    );
    expect(trace.disturbances).toEqual([{ name: 'a stop', begin: 30, end: 50, answered: 35 }]);
    expect(trace.responses).toEqual([{ number: 1, does: 'hold', name: null, began: 35, ended: 50 }]);
  });
});
