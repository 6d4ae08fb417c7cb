import { describe, expect, it } from 'vitest';
import { idealLine } from '../../src/line/ideal.ts';
import { markersOf, readShare } from '../../src/line/read-share.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import type { SpecOf } from '../../src/scenario/stations.ts';
import { expectMean, runsOf } from '../outside-checks/by-simulation.ts';
import { small } from './small-line.ts';

const cell = (marking: string, reader: string, more = ''): Scenario =>
  small(
    '10 h',
    `
stock:
  sheet: { unlimited: true }
parts:
  tray: { features: { rim: { nominal: 100 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: marking }
  marking: { does: mark, buffer: unlimited, cycle: 2 s, ${marking}, to: gauging }
  gauging:
    does: gauge
    buffer: unlimited
    cycle: 1 s
    every: 1
    measures: {}
    off-limits: pass
    reader: { ${reader} }
    to: good
${more}`,
  );

const expected = (scenario: Scenario) => {
  const gauging = scenario.stations.find(({ does }) => does === 'gauge') as SpecOf<'gauge'>;
  return readShare(markersOf(scenario), gauging.reader!);
};

describe('the share that is read', () => {
  it('is that of a mark that took, and attempts are wasted on one that did not', () => {
    // 0.9 x (1 - 0.2^2); 0.9 x (1 + 0.2) + 0.1 x 2 attempts.
    const found = expected(cell('takes-hold: 90 %', 'reads: 80 %, tries: 2, unread: pass'));
    expect(found.read).toBeCloseTo(0.9 * 0.96, 12);
    expect(found.tries).toBeCloseTo(0.9 * 1.2 + 0.2, 12);
  });

  it('is a mixture over the grades', () => {
    const reads = 'reads: { A: 90 %, B: 80 %, C: 60 %, D: 20 % }, unread: pass';
    const marking = 'takes-hold: 100 %, grades: { A: 40 %, B: 30 %, C: 20 %, D: 5 %, F: 5 % }';
    const { read, tries } = expected(cell(marking, reads));
    expect(read).toBeCloseTo(0.4 * 0.9 + 0.3 * 0.8 + 0.2 * 0.6 + 0.05 * 0.2, 12);
    expect(tries).toBeCloseTo(1, 12);
  });

  it('leaves out a station that only marks anew', () => {
    const more = '  second: { does: mark, buffer: 5, cycle: 3 s, takes-hold: 50 %, to: gauging }';
    const again = cell('takes-hold: 90 %', 'reads: 100 %, unread: { re-mark: second }', more);
    expect(markersOf(again).map(({ takesHold }) => takesHold)).toEqual([0.9]);
  });

  it('without a marking station is that of grade A', () => {
    const reads = cell('takes-hold: 90 %', 'reads: { A: 90 %, B: 0 %, C: 0 %, D: 0 % }, unread: pass');
    const gauging = reads.stations.find(({ does }) => does === 'gauge') as SpecOf<'gauge'>;
    expect(readShare([], gauging.reader!).read).toBeCloseTo(0.9, 12);
  });
});

describe('a mean cycle with a reader', { timeout: 60_000 }, () => {
  it('has the time that attempts and finding out by hand take on average', () => {
    const scenario = cell(
      'takes-hold: 90 %, grades: { A: 50 %, C: 50 % }',
      'reads: { A: 90 %, B: 80 %, C: 50 %, D: 0 % }, tries: 3, retry: 0.5 s, unread: { by-hand: 4 s }',
    );
    const gauging = idealLine(scenario).stations.find(({ station }) => station === 'gauging')!;
    // Unread: 0.1 + 0.45 x 0.001 + 0.45 x 0.125. Attempts after the first: 2 x 0.1 + 0.45 x (0.11 + 0.75).
    const exact = 1 + 4 * (0.1 + 0.45 * 0.126) + 0.5 * (0.2 + 0.45 * 0.86);
    expect(gauging.secondsPerPart).toBeCloseTo(exact, 12);
    const worked = runsOf(scenario).map(
      ({ stateShares, counts }) => (stateShares.gauging!.working * 36_000) / counts.good,
    );
    expectMean(worked, exact);
  });
});
