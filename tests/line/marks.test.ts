import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { Controls } from '../../src/line/controls.ts';
import { StandstillError } from '../../src/line/standstill.ts';
import { ran, seconds, small } from './small-line.ts';

interface Cell {
  readonly marking?: string;
  readonly reader?: string;
  readonly gauging?: string;
  readonly more?: string;
}

/** Forms a tray every 10 s, marks it within 2 s and gauges it within 1 s. */
const cell = ({ marking = '', reader = '', gauging = '', more = '' }: Cell) => `
stock:
  sheet: { unlimited: true }
parts:
  tray:
    features:
      rim: { nominal: 100 mm, made-at: forming, gains: { heater: 0.1 mm/°C } }
stations:
  forming:
    does: form
    takes: sheet
    makes: tray
    per-sheet: 1
    cycle: 10 s
    settings: { heater: { target: 150 °C } }
    to: marking
  marking: { does: mark, buffer: 5, cycle: 2 s, takes-hold: 100 %, ${marking} to: gauging }
  gauging:
    does: gauge
    buffer: 5
    cycle: 1 s
    every: 1
    measures: { rim: { repeatability: 0 mm } }
    off-limits: pass
    ${reader && `reader: { ${reader} }`}
    to: good
    ${gauging}
${more}`;

describe('a part that was chosen to be gauged and is sent to be marked anew', () => {
  // No mark takes, so each part is sent once where it is read, and gauged when it comes again. Trays come to the gauge at
  // 12, 22, ..., and those that are sent from there at once come again 2 s later; the reading takes 1 s.
  const read = (inspection: string, sheet = 'unlimited: true') => {
    const body = cell({ marking: '', reader: 'reads: 100 %, unread: { re-mark: marking }' })
      .replace('takes-hold: 100 %', 'takes-hold: 0 %')
      .replace('every: 1', inspection)
      .replace('unlimited: true', sheet);
    const line = prepare(small('200 s', body), 'carry on', 1);
    const times: number[] = [];
    line.gauges.get('gauging')!.readingListeners.push(() => times.push(line.calendar.now));
    line.calendar.run(200);
    return times;
  };

  it('is gauged when it comes again, whatever is chosen then', () => {
    expect(read('every: 4')).toEqual([45, 85, 125, 165]);
    expect(read('every: 60 s')).toEqual([65, 125, 185]);
    expect(read('first-of-lot: 3', 'on-hand: 100')).toEqual([15, 25, 35]);
  });
});

describe('the grade of a mark', () => {
  const READS_C = 'reads: { A: 0 %, B: 0 %, C: 100 %, D: 0 % }, unread: pass';

  it('decides whether it is read', () => {
    for (const [grades, unread] of [
      ['{ C: 100 % }', 0],
      ['{ B: 100 % }', 19],
      ['{ F: 100 % }', 19],
    ] as const) {
      const { counts } = ran(small('200 s', cell({ marking: `grades: ${grades},`, reader: READS_C })));
      // Trays come to the gauge at 12, 22, ..., 192.
      expect(counts.unread).toBe(unread);
    }
  });

  it('is A where nothing is said of it, or where nothing marks', () => {
    const alike = cell({ reader: 'reads: { A: 100 %, B: 0 %, C: 0 %, D: 0 % }, unread: pass' });
    expect(ran(small('200 s', alike)).counts.unread).toBe(0);
    const unmarked = alike.replace(/ {2}marking:.*\n/, '').replace('to: marking', 'to: gauging');
    expect(ran(small('200 s', unmarked)).counts.unread).toBe(0);
  });

  it('is that of its quality, the lowest parameter deciding', () => {
    // Contrast 60 % is B, modulation 32 % is C, and no codeword wrong leaves all of the error correction: A.
    const marking = `quality: { contrast: { mean: 60 % }, modulation: { mean: 32 % }, unused-error-correction: { symbol: data-matrix 24x24, wrong-codewords: 0 % } },`;
    expect(ran(small('200 s', cell({ marking, reader: READS_C }))).counts.unread).toBe(0);
    // With all wrong it is F.
    const broken = marking.replace('wrong-codewords: 0 %', 'wrong-codewords: 100 %');
    expect(ran(small('200 s', cell({ marking: broken, reader: READS_C }))).counts.unread).toBe(19);
  });

  it('belongs to the part: what a reader does with others changes nothing', () => {
    const seen = (reader: string) => {
      const line = prepare(
        small('2000 s', cell({ marking: 'grades: { A: 50 %, C: 50 % },', reader })),
        'carry on',
        3,
      );
      const unread: boolean[] = [];
      line.gauges.get('gauging')!.reader!.listeners.push((failed) => unread.push(failed));
      line.calendar.run(2000);
      return unread;
    };
    const plain = seen(READS_C);
    expect(new Set(plain).size).toBe(2);
    expect(seen(READS_C.replace('C: 100 %', 'C: 100 %, F: 50 %'))).toEqual(plain);
    expect(seen(`${READS_C}, tries: 3, retry: 0.1 s`)).toEqual(plain);
  });
});

describe('a disturbance of grades', () => {
  const faded = (disturbances: string) =>
    small(
      '400 s',
      cell({
        marking: 'grades: { A: 100 % },',
        reader: 'reads: { A: 100 %, B: 100 %, C: 100 %, D: 0 % }, unread: pass',
        more: `disturbances:\n${disturbances}`,
      }),
    );
  const poor = (grade: string, at: number, lasts: number) =>
    `  ${grade} at ${at}: { disturbs: marks, station: marking, grades: { ${grade}: 100 % }, at: ${at} s, for: ${lasts} s }`;

  it('replaces them while it lasts', () => {
    // Marks end at 12, 22, ..., 392; those of 102 to 192 are D.
    expect(ran(faded(poor('D', 95, 100))).counts.unread).toBe(10);
  });

  it('brings some where all marks are alike otherwise', () => {
    const alike = cell({
      reader: 'reads: { A: 100 %, B: 100 %, C: 100 %, D: 0 % }, unread: pass',
      more: `disturbances:\n${poor('D', 95, 100)}`,
    });
    expect(ran(small('400 s', alike)).counts.unread).toBe(10);
  });

  it('gives way to a worse one', () => {
    const both = `${poor('D', 95, 100)}\n${poor('C', 95, 200)}`;
    expect(ran(faded(both)).counts.unread).toBe(10);
    const other = `${poor('C', 95, 100)}\n${poor('D', 95, 200)}`;
    expect(ran(faded(other)).counts.unread).toBe(20);
  });

  it('leaves alone what takes, and a share that takes leaves the grades alone', () => {
    const taking = '  fading: { disturbs: marks, station: marking, takes-hold: 0 %, at: 295 s, for: 50 s }';
    expect(ran(faded(`${poor('D', 95, 100)}\n${taking}`)).counts.unread).toBe(10 + 5);
  });
});

describe('attempts to read', () => {
  it('take their time, and are all made where the mark cannot be read', () => {
    // The first of three adds nothing: 1 s + 2 x 0.5 s. Trays are gauged from 12, 22, ..., 192 on.
    const never = cell({ reader: 'reads: 0 %, tries: 3, retry: 0.5 s, unread: pass' });
    expect(seconds(ran(small('200 s', never)), 'gauging', 200).working).toBe(19 * 2);
    const always = cell({ reader: 'reads: 100 %, tries: 3, retry: 0.5 s, unread: pass' });
    expect(seconds(ran(small('200 s', always)), 'gauging', 200).working).toBe(19);
  });

  it('come before finding out by hand', () => {
    const byHand = cell({ reader: 'reads: 0 %, tries: 3, retry: 0.5 s, unread: { by-hand: 4 s }' });
    expect(seconds(ran(small('200 s', byHand)), 'gauging', 200).working).toBe(19 * 6);
  });

  it('count as one sight, and as one part unread', () => {
    const line = prepare(
      small('200 s', cell({ reader: 'reads: 0 %, tries: 3, unread: pass' })),
      'carry on',
      1,
    );
    const seen: boolean[] = [];
    new Controls(line).onSight('gauging', 'unread', (wrong) => seen.push(wrong));
    line.calendar.run(200);
    expect(seen).toEqual(Array(19).fill(true));
    expect(line.tally.unread).toBe(19);
  });
});

describe('a part that is marked anew', () => {
  const NEVER = 'reads: 0 %, unread: { re-mark: marking, limit: 2 }';

  it('goes back without being gauged, so often as it may, and then goes on', () => {
    const { counts, stateShares } = ran(small('200 s', cell({ reader: NEVER })));
    // Each tray is marked at 10-12, 12-14 and 14-16 after its sheet was loaded, and gauged 16-17: 19 trays by 197.
    expect(counts).toMatchObject({ good: 19, reMarked: 38, unread: 57 });
    // The sheet of 180 is marked to 196 and done at 197; that of 190 comes at 200.
    expect(stateShares.marking!.working * 200).toBeCloseTo(19 * 6, 9);
    expect(stateShares.gauging!.working * 200).toBeCloseTo(19, 9);
  });

  it('is scrapped at last where the reader says so', () => {
    const scrapped = cell({ reader: NEVER.replace('limit: 2', 'limit: 2, afterwards: scrap') });
    expect(ran(small('200 s', scrapped)).counts).toMatchObject({ good: 0, scrapped: 19, reMarked: 38 });
  });

  it('takes the time of all attempts where it is not read', () => {
    const slow = cell({ reader: `tries: 3, retry: 0.25 s, ${NEVER}` });
    // Twice 0.5 s, then 0.5 s and 1 s of gauging.
    expect(seconds(ran(small('100 s', slow)), 'gauging', 100).working).toBe(9 * 2.5);
  });

  it('keeps the luck of its first gauging for when it is gauged', () => {
    const readings = (reader: string) => {
      const noisy = cell({ reader }).replace('repeatability: 0 mm', 'repeatability: 1 mm');
      const line = prepare(small('400 s', noisy), 'carry on', 1);
      const seen: number[] = [];
      line.gauges.get('gauging')!.readingListeners.push((_feature, reading) => seen.push(reading));
      line.calendar.run(400);
      return seen.slice(0, 30);
    };
    const plain = readings('reads: 0 %, unread: pass');
    expect(plain.length).toBe(30);
    expect(readings(NEVER)).toEqual(plain);
  });

  it('leaves the mates in hand to the next part', () => {
    const assembling = (reader: string) => `
stock:
  sheet: { unlimited: true }
  frame: { on-hand: 1, features: { groove: { nominal: 101 mm } } }
parts:
  tray: { features: { rim: { nominal: 100 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: marking }
  marking: { does: mark, buffer: 5, cycle: 2 s, takes-hold: 100 %, to: assembly }
  assembly:
    does: assemble
    buffer: 5
    takes: [frame]
    cycle: 1 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0 mm, most: 2 mm }]
    misfit: scrap
    reader: { ${reader} }
    to: good`;
    // The first tray goes back twice with the only frame in hand, and is put into it the third time, 16-17.
    const { counts, stateShares } = ran(small('17 s', assembling(NEVER)));
    expect(counts).toMatchObject({ good: 1, reMarked: 2, firstAttempts: 1 });
    expect(stateShares.assembly!.working * 17).toBeCloseTo(1, 12);
  });

  it('may come to a station that marks only such parts', () => {
    const second = cell({
      reader: NEVER.replace('marking', 'second'),
      more: '  second: { does: mark, buffer: 5, cycle: 3 s, takes-hold: 100 %, to: gauging }',
    });
    const { stateShares, counts } = ran(small('100 s', second));
    // Trays at the gauge at 12, ..., 92; each goes there twice, 3 s a time.
    expect(stateShares.second!.working * 100).toBeCloseTo(8 * 6 + 6, 9);
    expect(counts.good).toBe(9);
  });

  it('waits for room, and where nothing will ever move the line says so', () => {
    // Two trays a sheet; with no room in front, marking waits for the gauge with one, and the gauge for marking.
    const knot = cell({ reader: NEVER }).replace('buffer: 5', 'buffer: 0').replace('buffer: 5', 'buffer: 0');
    const crowded = knot.replace('per-sheet: 1', 'per-sheet: 3').replace('cycle: 1 s', 'cycle: 3 s');
    expect(() => ran(small('1 h', crowded))).toThrow(StandstillError);
    expect(() => ran(small('1 h', crowded))).toThrow('"gauging" waits for room in front of "marking"');
  });
});

describe('what is known by a mark', () => {
  /** For each tray at its second gauging: the reading kept of the first, and what a policy is told of its forming. */
  const kept = (reader: string, between: string) => {
    const body = cell({ reader, more: '' })
      .replace('to: good', 'to: between')
      .concat(`
  between: ${between}
  last: { does: gauge, buffer: 5, cycle: 1 s, every: 1, measures: { rim: { repeatability: 0 mm } }, off-limits: pass, to: good }`);
    const line = prepare(small('100 s', body), 'carry on', 1);
    const { reading } = line.features.get('rim')!;
    const before: number[] = [];
    const inbox = line.stations.get('last')!.inbox!;
    const accept = inbox.accept.bind(inbox);
    inbox.accept = (row) => {
      before.push(line.parts.get(row, reading));
      return accept(row);
    };
    const told: (number | null)[] = [];
    new Controls(line).onReading('rim', 'heater', ({ adjustedThen }) => told.push(adjustedThen));
    line.calendar.run(100);
    return { before, told };
  };
  const PASSES = '{ does: work, buffer: 5, cycle: 1 s, to: last }';
  const MARKS = '{ does: mark, buffer: 5, cycle: 1 s, takes-hold: 100 %, to: last }';

  it('stays with the part while it has its mark', () => {
    const { before, told } = kept('reads: 100 %, unread: pass', PASSES);
    expect(before).toEqual(Array(9).fill(100));
    expect(told).toEqual(Array(18).fill(0));
  });

  it('is not written where the mark is not read, and is where somebody finds out by hand', () => {
    expect(kept('reads: 0 %, unread: pass', PASSES).before).toEqual(Array(9).fill(Number.NaN));
    expect(kept('reads: 0 %, unread: { by-hand: 1 s }', PASSES).before).toEqual(Array(9).fill(100));
  });

  it('is lost with the mark when the part is marked anew', () => {
    const { before, told } = kept('reads: 100 %, unread: pass', MARKS);
    expect(before).toEqual(Array(9).fill(Number.NaN));
    // Before the new mark it is known how the part was formed, after it no more.
    expect(told.filter((then) => then === 0).length).toBe(9);
    expect(told.filter((then) => then === null).length).toBe(9);
  });
});

it('a match counts on what its reader will read, attempts and grade included', () => {
  const body = `
stock:
  sheet: { unlimited: true }
  frame: { unlimited: true, features: { groove: { nominal: 101 mm } } }
parts:
  tray: { features: { rim: { nominal: 100 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: marking }
  marking: { does: mark, buffer: 5, cycle: 2 s, takes-hold: 90 %, grades: { A: 50 %, D: 50 % }, to: assembly }
  assembly:
    does: assemble
    buffer: 5
    takes: [frame]
    cycle: 1 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0 mm, most: 2 mm }]
    misfit: scrap
    reader: { reads: { A: 80 %, B: 80 %, C: 60 %, D: 30 % }, tries: 2, unread: pass }
    to: good`;
  const line = prepare(small('4000 s', body), 'carry on', 1);
  const { reader } = line.assemblies.get('assembly')!;
  const foreseen: boolean[] = [];
  const read = reader!.read.bind(reader);
  reader!.read = (row) => {
    foreseen.push(reader!.canRead(row));
    return read(row);
  };
  const happened: boolean[] = [];
  reader!.listeners.push((unread) => happened.push(!unread));
  line.calendar.run(4000);
  expect(happened).toEqual(foreseen);
  expect(new Set(happened).size).toBe(2);
  expect(happened.length).toBeGreaterThan(390);
});
