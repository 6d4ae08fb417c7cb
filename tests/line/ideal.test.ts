import { mean, sampleVariance } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { idealLine } from '../../src/line/ideal.ts';
import { blanks, ran, small } from './small-line.ts';

const ideal = (body: string) => idealLine(small('1 h', body));
const only = (rest: string, more = '') =>
  `${blanks(`  only: { does: work, takes: blank, to: good, ${rest} }`)}${more}`;

describe('the ideal rate of a station', () => {
  it.each([
    ['its cycle', 'cycle: 5 s', 1 / 5],
    ['several machines', 'cycle: 6 s, machines: 3', 1 / 2],
    ['a speed loss', 'cycle: 8 s, speed: 80 %', 1 / 10],
    ['handling', 'cycle: 5 s, handling: { load: 2 s, unload: 1 s }', 1 / 8],
    // 3 parts in 6 s and 4 s of set-up.
    ['a set-up by cycles', 'cycle: 2 s, set-ups: { tool: { cycles: 3, takes: 4 s } }', 3 / 10],
    // In 20 s of work 10 parts, then 5 s.
    [
      'maintenance by working time',
      'cycle: 2 s, maintenance: { oil: { every: 20 s, counted: working, takes: 5 s } }',
      10 / 25,
    ],
    // 9 s of each 10.
    [
      'breakdowns by the clock',
      'cycle: 1 s, breakdowns: { stop: { every: 9 s, counted: clock, repair: 1 s, cycle: resumes } }',
      0.9,
    ],
    // For 60 s of work, that is 30 parts, 2 jams of 5 s and 3 of 10 s.
    [
      'two ways of breaking down by working time',
      'cycle: 2 s, breakdowns: { a: { every: 30 s, counted: working, repair: 5 s, cycle: resumes }, b: { every: 20 s, counted: working, repair: 10 s, cycle: resumes } }',
      30 / 100,
    ],
    // 10 parts take 80 s of work, 20 s of loading and one repair of 20 s: handling does not wear.
    [
      'breakdowns by working time beside handling',
      'cycle: 8 s, handling: { load: 2 s }, breakdowns: { stop: { every: 80 s, counted: working, repair: 20 s, cycle: resumes } }',
      10 / 120,
    ],
    // 4 parts take 4 x 10 s with handling and one set-up of 10 s.
    [
      'a set-up by cycles beside handling',
      'cycle: 8 s, handling: { unload: 2 s }, set-ups: { tool: { cycles: 4, takes: 10 s } }',
      4 / 50,
    ],
  ])('follows from %s, and is what a run of it comes to', (_, rest, expected) => {
    const body = only(rest);
    const { rate, stations, bottleneck } = ideal(body);
    expect(rate).toBeCloseTo(expected, 12);
    expect(stations[0]!.rate).toBeCloseTo(expected, 12);
    expect(bottleneck).toBe('only');
    // All times are constant: over so long a run only the last round is not whole.
    const hours = 200;
    const perHour = ran(small(`${hours} h`, body)).measures.throughput_per_h!;
    expect(Math.abs(perHour / 3600 - expected)).toBeLessThan(100 / (hours * 3600));
  });

  it('is not exceeded by a run where breakdowns, repairs and handling overlap', () => {
    // For each part 8 s of work, 2 s of handling and, one in 40 s of work, 2 s of repair. By the clock it is down a fifth
    // of the time. If that hit all of it alike, work took 8 / 0.8 s. But handling and repair begin with it up, so that
    // less of them and more of the work is hit; at the worst all of it falls to the work: a fifth of the whole is lost.
    const law = (mean: number) => `{ distribution: exponential, mean: ${mean} s }`;
    const mode = (counted: string) =>
      `{ every: ${law(40)}, counted: ${counted}, repair: ${law(10)}, cycle: resumes }`;
    const body = only(
      `cycle: ${law(8)}, handling: { load: 2 s }, breakdowns: { a: ${mode('working')}, b: ${mode('clock')} }`,
    );
    const { rate } = ideal(body);
    expect(rate).toBeCloseTo(1 / (8 / 0.8 + 2 + 2), 12);
    const scenario = small('20 h', body);
    const rates = Array.from({ length: 20 }, (_, i) => ran(scenario, 'carry on', i + 1).counts.good / 72_000);
    const error = Math.sqrt(sampleVariance(rates) / rates.length);
    expect(mean(rates)).toBeLessThan(rate + 3.5 * error);
    expect(mean(rates)).toBeGreaterThan(0.8 / (8 + 2 + 2) - 3.5 * error);
  });

  it('follows from its calendar', () => {
    const hours =
      '\ncalendars:\n  hours: { shifts: [{ days: [mon, tue, wed, thu, fri], begins: 6 h, lasts: 8 h }] }';
    const body = only('cycle: 1 h, calendar: hours', hours);
    expect(ideal(body).rate * 3600).toBeCloseTo(40 / 168, 12);
    expect(ran(small('168 d', body)).counts.good).toBe(40 * 24);
  });

  it('follows from the batch', () => {
    const body = blanks(`  source: { does: work, takes: blank, cycle: 1 s, to: b }
  b: { does: work, buffer: 6, batch: 3, cycle: 6 s, to: good }`);
    const { rate, bottleneck } = ideal(body);
    expect(rate).toBeCloseTo(0.5, 12);
    expect(bottleneck).toBe('b');
    expect(ran(small('6000 s', body, '1000 s')).measures.throughput_per_h).toBeCloseTo(1800, 9);
  });

  it('follows from the sheet, its heating and its set-ups by cycles', () => {
    // 2 mm heated for 4 s/mm beside 2 s: 10 s a sheet of 4; after 5 sheets a tool change of 10 s.
    const body = `
stock:
  sheet: { unlimited: true, thickness: { nominal: 2 mm } }
parts:
  tray: { features: { rim: { nominal: 100 mm, made-at: forming } } }
stations:
  forming:
    does: form
    takes: sheet
    makes: tray
    per-sheet: 4
    cycle: 2 s
    heating: 4 s/mm
    set-ups: { tool: { cycles: 5, takes: 10 s } }
    to: good`;
    expect(ideal(body).rate).toBeCloseTo(20 / 60, 12);
    expect(ran(small('6000 s', body)).counts.good).toBe(2000);
  });

  it('follows from how often a gauge gauges, and set-ups count the parts that pass', () => {
    // Of 4 parts 2 are gauged, for 3 s each; after every 4 parts, cleaned for 2 s.
    const body = `
stock:
  sheet: { unlimited: true }
parts:
  tray: { features: { rim: { nominal: 100 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 1 s, to: gauging }
  gauging:
    does: gauge
    buffer: 10
    cycle: 3 s
    every: 2
    measures: { rim: { repeatability: 0 mm } }
    off-limits: pass
    set-ups: { clean: { cycles: 4, takes: 2 s } }
    to: good`;
    expect(ideal(body).rate).toBeCloseTo(4 / 8, 12);
    expect(ran(small('8000 s', body, '100 s')).measures.throughput_per_h).toBeCloseTo(1800, 0);
  });
});

describe('flows', () => {
  // Traffic equations: the flow through a station is what comes from outside plus what the others send it.
  // J. R. Jackson (1957), Operations Research 5, 518-521, and (1963), Management Science 10, 131-142 (from memory).
  it('by share solve the traffic equations of a network with feedback', () => {
    const body = `
stations:
  entrance: { does: arrive, every: 10 s, to: s1 }
  s1: { does: work, buffer: unlimited, cycle: 1 s, to: { by: share, routes: { s2: 60 %, s3: 40 % } } }
  s2: { does: work, buffer: unlimited, cycle: 1 s, to: { by: share, routes: { s1: 30 %, good: 70 % } } }
  s3: { does: work, buffer: unlimited, cycle: 1 s, to: { by: share, routes: { s2: 50 %, good: 50 % } } }`;
    // v1 = 1/10 + 0.3 v2, v2 = 0.6 v1 + 0.5 v3, v3 = 0.4 v1; so v2 = 0.8 v1 and v1 = (1/10) / (1 - 0.24).
    const v1 = 0.1 / 0.76;
    const { stations, rate, bottleneck } = ideal(body);
    const flow = Object.fromEntries(stations.map((at) => [at.station, at.flow]));
    expect(flow.entrance).toBeCloseTo(0.1, 12);
    expect(flow.s1).toBeCloseTo(v1, 9);
    expect(flow.s2).toBeCloseTo(0.8 * v1, 9);
    expect(flow.s3).toBeCloseTo(0.4 * v1, 9);
    // What comes in goes out.
    expect(rate).toBeCloseTo(0.1, 9);
    expect(bottleneck).toBe('entrance');
  });

  it('in two branches end in the bottleneck behind them', () => {
    // a and b could pass on 1/4 and 1/5 a second, c 1/3.
    const body =
      blanks(`  source: { does: work, takes: blank, cycle: 1 s, to: { by: priority, routes: [a, b] } }
  a: { does: work, buffer: 1, cycle: 4 s, to: c }
  b: { does: work, buffer: 1, cycle: 5 s, to: c }
  c: { does: work, buffer: 1, cycle: 3 s, to: good }`);
    const { rate, bottleneck } = ideal(body);
    expect(rate).toBeCloseTo(1 / 3, 12);
    expect(bottleneck).toBe('c');
  });

  it('by share are held up as a whole by a branch that cannot take its part', () => {
    // Six of ten parts go to a, which takes one in 10 s; with the buffer full they hold up the others as well.
    const body =
      blanks(`  source: { does: work, takes: blank, cycle: 1 s, to: { by: share, routes: { a: 60 %, b: 40 % } } }
  a: { does: work, buffer: 5, cycle: 10 s, to: good }
  b: { does: work, buffer: 5, cycle: 1 s, to: good }`);
    const { rate, bottleneck } = ideal(body);
    expect(bottleneck).toBe('a');
    expect(rate).toBeCloseTo(0.1 / 0.6, 9);
  });

  it('have no limit through stations whose cycles take no time', () => {
    const body = blanks(`  a: { does: work, takes: blank, cycle: 0 s, to: b }
  b: { does: work, buffer: 1, cycle: 0 s, to: c }
  c: { does: work, buffer: 1, cycle: 0 s, to: good }`);
    expect(ideal(body).rate).toBe(Number.POSITIVE_INFINITY);
  });

  it('by share are not held up where arrivals that find no room are turned away', () => {
    // An arrival every 36 s, every second to a branch that takes one in 360 s, where the others are lost.
    const fork = (full: string) =>
      small(
        '1000 h',
        `
stations:
  door: { does: arrive, every: 36 s, when-full: ${full}, to: { by: share, routes: { slow: 50 %, fast: 50 % } } }
  slow: { does: work, buffer: 50, cycle: 360 s, to: good }
  fast: { does: work, buffer: 2, cycle: 3 s, to: good }`,
      );
    expect(idealLine(fork('waits')).rate).toBeCloseTo(2 / 360, 12);
    const lost = fork('lost');
    expect(idealLine(lost).rate).toBeCloseTo(1 / 360 + 1 / 72, 12);
    // The slow branch is never empty in the long run; the rest is the draw between the branches, a binomial one.
    const arrivals = 1000 * 100;
    const error = Math.sqrt(arrivals / 4) / arrivals / 36;
    const rate = ran(lost).measures.throughput_per_h! / 3600;
    expect(Math.abs(rate - (1 / 360 + 1 / 72))).toBeLessThan(4 * error);
  });
});
