import { describe, expect, it } from 'vitest';
import { prepare, simulate } from '../../src/experiment/simulate.ts';
import { selfCheck } from '../../src/line/self-check.ts';
import { ran, small } from './small-line.ts';

interface Cell {
  /** The keys of the response besides `at`. */
  readonly match: string;
  readonly cavities?: string;
  /** Of the mate. */
  readonly groove?: string;
  readonly forming?: string;
  readonly cycle?: string;
  readonly buffer?: string;
  readonly machines?: number;
  readonly own?: string;
}

/** Trays of 10 mm, gauged without error, meet grooves with a clearance of 0.05 to 0.55 mm. */
const cell = ({
  match,
  cavities = '[0 mm, 0.1 mm, 0.2 mm, 0.4 mm]',
  groove = 'nominal: 10.5 mm',
  forming = '10 s',
  cycle = '100 s',
  buffer = '3',
  machines = 1,
  own = '',
}: Cell) => `
stock:
  sheet: { unlimited: true }
  frame: { unlimited: true, features: { groove: { ${groove} } } }
parts:
  tray: { features: { rim: { nominal: 10 mm, made-at: forming, cavities: ${cavities}${own} } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: ${cavities.split(',').length}, cycle: ${forming}, to: gauging }
  gauging:
    does: gauge
    buffer: 4
    cycle: 1 s
    every: 1
    measures: { rim: { repeatability: 0 mm } }
    off-limits: pass
    to: assembly
  assembly:
    does: assemble
    buffer: ${buffer}
    machines: ${machines}
    takes: [frame]
    cycle: ${cycle}
    fits: [{ hole: frame.groove, shaft: rim, least: 0.05 mm, most: 0.55 mm }]
    misfit: scrap
    to: good
policies:
  carry on: []
  match: [{ do: match, at: assembly, mate-repeatability: 0 mm, takes: 0 s, ${match} }]`;

/** True sizes of the first parts in the order in which assembly takes them, and when, s. */
function picks(of: Cell, seconds = 400, policy = 'match') {
  const line = prepare(small('1 h', cell(of)), policy, 1);
  const { operation } = line.stations.get('assembly')!.machines[0]!;
  const rim = line.features.get('rim')!;
  const picked: { size: number; at: number }[] = [];
  const begin = operation.begin.bind(operation);
  operation.begin = (machine) => {
    const begun = begin(machine);
    if (begun) {
      const size = line.parts.get(machine.load[0]!, rim.truth);
      picked.push({ size: Math.round(size * 1000) / 1000, at: line.calendar.now });
    }
    return begun;
  };
  line.calendar.run(seconds);
  selfCheck(line);
  return picked;
}
const sizes = (of: Cell) => picks(of).map(({ size }) => size);

// Clearances of a sheet's trays: 0.5, 0.4, 0.3 and 0.1 mm; margins 0.05, 0.15, 0.25 and 0.05. The first comes alone and
// is taken at 11 s; when it is done at 111 s the other three wait.
describe('the rule', () => {
  it.each([
    // 0.4, 0.3 and 0.1 wait: the hardest, the widest, the oldest of those that promise a margin of 0.1 mm.
    ['hardest-fit', 'guard: 0.04 mm', 10.4],
    ['hardest-fit', 'guard: 0.1 mm', 10.1],
    ['best-margin', 'guard: 0.1 mm', 10.2],
    ['best-margin', 'guard: 0.9 mm', 10.2],
    ['first-fit', 'guard: 0.1 mm', 10.1],
    ['first-fit', 'guard: 0.2 mm', 10.2],
    // None promises that much: the widest margin comes nearest.
    ['first-fit', 'guard: 0.9 mm', 10.2],
  ])('%s with %s takes the tray of %d mm', (rule, guard, expected) => {
    expect(sizes({ match: `among: 3, rule: ${rule}, ${guard}` })[1]).toBe(expected);
  });

  it('classes pairs large with large: within a class the clearance varies by less than a width to either side', () => {
    // Selective assembly, common practice of the trade: sizes of one class differ by less than its width, so a hole and a
    // shaft of one class have the designed clearance but for less than a width.
    const width = 0.1;
    const of: Cell = {
      match: `bank: 60, rule: classes, classes: { number: 40, width: ${width} mm }`,
      ...{ groove: 'nominal: 10.3 mm, own-sd: 0.2 mm', own: ', own-sd: 0.2 mm' },
      ...{ cavities: '[0 mm, 0 mm]', forming: '2 s', cycle: '2 s' },
    };
    const line = prepare(small('1 h', cell(of)), 'match', 1);
    const assembly = line.assemblies.get('assembly')!;
    const rim = line.features.get('rim')!;
    const gaps: number[] = [];
    let same = 0;
    const { operation, load } = line.stations.get('assembly')!.machines[0]!;
    const begin = operation.begin.bind(operation);
    const classOf = (deviation: number) => Math.floor(deviation / width);
    operation.begin = (machine) => {
      const begun = begin(machine);
      if (!begun) return begun;
      const [size, hole] = [line.parts.get(load[0]!, rim.truth), assembly.hands[0]!.mate[0]!];
      if (classOf(size - 10) !== classOf(hole - 10.3)) return begun;
      same++;
      gaps.push(Math.abs(hole - size - 0.3));
      return begun;
    };
    line.calendar.run(3600);
    expect(same).toBeGreaterThan(1000);
    expect(Math.max(...gaps)).toBeLessThan(width);
  });
});

describe('a bank', () => {
  it('stands beside the buffer: its parts are the oldest, and make room in it', () => {
    // Without a bank, one on the machine, three in the buffer, one held by the gauge, four in front of it.
    const inLine = (match: string, buffer: string) => {
      const line = prepare(small('1 h', cell({ match, buffer, cycle: '1 h' })), 'match', 1);
      line.calendar.run(1000);
      return line.stations.get('assembly')!.crowd;
    };
    expect(inLine('among: 3, guard: 0 mm', '3')).toBe(1 + 3);
    expect(inLine('bank: 5, guard: 0 mm', '3')).toBe(1 + 3 + 5);
    expect(inLine('bank: 5, guard: 0 mm', '0')).toBe(1 + 5);
    expect(inLine('bank: 5, guard: 0 mm', '{ places: 3, transit: 3 s }')).toBe(1 + 3 + 5);
    // A belt carries no more than before: three of its own, and what waits at its end.
    const line = prepare(
      small(
        '1 h',
        cell({ match: 'bank: 5, guard: 0 mm', buffer: '{ places: 3, transit: 300 s }', cycle: '1 h' }),
      ),
      'match',
      1,
    );
    line.calendar.run(299);
    expect(line.stations.get('assembly')!.crowd).toBe(3);
  });

  it('is what is compared: no part behind it is seen', () => {
    expect(picks({ match: 'bank: 2, guard: 0.04 mm' })[1]!.size).toBe(10.1);
    expect(picks({ match: 'bank: 3, guard: 0.04 mm' })[1]!.size).toBe(10.4);
  });

  it('is set by the later of two responses alone', () => {
    const two = cell({ match: 'bank: 5, guard: 0 mm', cycle: '1 h' });
    const again = two.replace(/ {2}match: \[(.*)\]$/, '  match: [$1, $1]');
    const line = prepare(small('1 h', again), 'match', 1);
    line.calendar.run(1000);
    expect(line.stations.get('assembly')!.crowd).toBe(1 + 3 + 5);
  });
});

describe('a mate', () => {
  // Guard 0.2 mm: only the trays of 10.2 mm promise it. They come off the gauge at 13 s, 23 s, 33 s, ...
  const choosy = 'bank: 3, rule: first-fit, guard: 0.2 mm';

  it('does not wait where nothing is said', () => {
    expect(picks({ match: choosy, cycle: '1 s' })[0]).toEqual({ size: 10, at: 11 });
  });

  it('waits for a part that promises to fit, while its patience lasts', () => {
    expect(picks({ match: `${choosy}, patience: 20 s`, cycle: '1 s' })[0]).toEqual({ size: 10.2, at: 13 });
    // At 12.5 s only 10 and 10.1 are there: the wider margin is taken.
    expect(picks({ match: `${choosy}, patience: 1.5 s`, cycle: '1 s' })[0]).toEqual({ size: 10.1, at: 12.5 });
  });

  it('does not wait once the bank is full', () => {
    const match = 'bank: 2, rule: first-fit, guard: 0.2 mm, patience: 1 h';
    expect(picks({ match, cycle: '1 s' })[0]).toEqual({ size: 10.1, at: 12 });
  });

  it('waits anew for each part', () => {
    // All are 10.1 mm and promise 0.15 mm: each mate waits its 30 s, from when the machine is free and a part there.
    const taken = picks(
      {
        match: 'bank: 50, rule: first-fit, guard: 0.2 mm, patience: 30 s',
        cavities: '[0.1 mm]',
        cycle: '1 s',
      },
      140,
    );
    expect(taken.map(({ at }) => at)).toEqual([41, 72, 103, 134]);
  });

  it('waits anew when the response comes into force again', () => {
    // Parts come at 11, 21, 31, ... s. At 20 s nothing is chosen any more and the first is taken; from 30 s on that of 31 s
    // waits its 30 s, whatever was left of waiting for the first.
    const match = 'bank: 50, rule: first-fit, guard: 0.2 mm, patience: 30 s';
    const when = 'when: { any: [{ to: 20 s }, { from: 30 s }] }';
    const taken = picks({ match: `${match}, ${when}`, cavities: '[0.1 mm]', cycle: '1 s' }, 70);
    expect(taken.map(({ at }) => at)).toEqual([20, 21, 61]);
  });

  it('waits at each machine by itself', () => {
    const of = { match: 'bank: 50, rule: first-fit, guard: 0.2 mm, patience: 30 s', cavities: '[0.1 mm]' };
    const { counts } = ran(small('150 s', cell({ ...of, cycle: '1 s', machines: 2 })), 'match');
    // Both wait from 11 to 41 s, and so on: 41, 72, 103 and 134 s, twice.
    expect(counts.good).toBe(8);
  });
});

describe('parts that cannot be matched', () => {
  // Every tray is 1 mm too large for every groove.
  const hopeless = { cavities: '[1 mm, 1 mm]', cycle: '1 s', forming: '4 s' };
  it.each([
    ['first-fit', 'guard: 0 mm', '0 s'],
    ['first-fit', 'guard: 0 mm', '10 h'],
    ['best-margin', 'guard: 0 mm', '10 h'],
    ['hardest-fit', 'guard: 0 mm', '10 h'],
    ['classes', 'classes: { number: 9, width: 0.1 mm }', '10 h'],
  ])('and fill the bank do not stop the line: %s, %s, patience %s', (rule, keys, patience) => {
    const match = `bank: 6, rule: ${rule}, ${keys}, patience: ${patience}`;
    const { counts } = ran(small('1 h', cell({ ...hopeless, match })), 'match');
    expect(counts.good).toBe(0);
    // A tray every 2 s.
    expect(counts.scrapped).toBeGreaterThan(1800 - 12);
  });

  it('nor does a belt in front of the bank', () => {
    const match = 'bank: 6, rule: first-fit, guard: 0 mm, patience: 10 h';
    const buffer = '{ places: 4, transit: 8 s, spacing: 1.5 s }';
    const { counts } = ran(small('1 h', cell({ ...hopeless, match, buffer })), 'match');
    expect(counts.scrapped).toBeGreaterThan(1800 - 20);
  });

  it('are tried when nothing else comes: patience ends although the bank is never full', () => {
    // A single sheet.
    const body = cell({
      ...hopeless,
      match: 'bank: 6, rule: first-fit, guard: 0 mm, patience: 60 s',
    }).replace('sheet: { unlimited: true }', 'sheet: { on-hand: 1 }');
    expect(ran(small('1 h', body), 'match').counts).toMatchObject({ started: 2, scrapped: 2 });
  });
});

describe('matching', () => {
  const spread = (match: string): Cell => ({
    match,
    ...{ groove: 'nominal: 10.3 mm, own-sd: 0.15 mm', own: ', own-sd: 0.15 mm' },
    ...{ cavities: '[0 mm, 0 mm]', forming: '8 s', cycle: '3 s' },
  });

  // A property: whoever may choose among more is not worse off, here by so much that no accident explains it.
  it.each([
    'bank: 12, rule: first-fit, guard: 0.05 mm, patience: 20 s',
    'bank: 12, rule: best-margin, guard: 0.05 mm, patience: 20 s',
    'bank: 12, rule: hardest-fit, guard: 0.05 mm, patience: 20 s',
    'bank: 12, rule: classes, classes: { number: 5, width: 0.1 mm }, patience: 20 s',
  ])('by %s fits at least as often as taking parts as they come, under each seed', (match) => {
    const scenario = small('4 h', cell(spread(match)));
    for (let seed = 1; seed <= 5; seed++) {
      const rate = (policy: string) => simulate(scenario, policy, seed).measures.fit_rate!;
      expect(rate('match')).toBeGreaterThan(rate('carry on'));
    }
  });
});
