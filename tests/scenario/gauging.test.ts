import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { AIAG_STUDY } from '../statistics/aiag-study.ts';
import { changed, expectRefused, refuses, SOUND } from './sample.ts';

const EVERY = '    every: 12\n';
/** The gauge of the sound cell with this in place of `every`. */
const chosen = (by: string, text = SOUND) => changed(EVERY, `    ${by}\n`, text);
const LOT = '{ lot: 9, aql: 1 %, rejected: screen }';
const lot = (from: string, to: string) => chosen(`acceptance: ${changed(from, to, LOT)}`);
/** Without the policy that gauges all, which lots rule out. */
const unruly = (text: string) =>
  changed('    - { do: inspect, at: gauging, every: 1, off-limits: scrap }\n', '', text);
const reading = (keys: string) => changed('rim: { repeatability: 0.02 mm }', `rim: { ${keys} }`);

function gaugingOf(text: string) {
  const station = parseScenario(text, 'cell.yaml').stations.find(({ name }) => name === 'gauging')!;
  if (station.does !== 'gauge') throw new Error('it gauges');
  return station;
}

describe('which parts are gauged', () => {
  it.each([
    ['every: 12', { by: 'count', every: 12 }],
    ['every: 10 min', { by: 'clock', every: 600 }],
    ['first-of-lot: 5', { by: 'delivery', first: 5 }],
  ])('is said by %s', (text, expected) => {
    expect(gaugingOf(chosen(text)).inspection).toEqual(expected);
  });

  it('is said by an acceptance plan', () => {
    expect(gaugingOf(unruly(chosen(`acceptance: ${LOT}`))).inspection).toEqual({
      ...{ by: 'plan', lot: 9, aql: 0.01, rejected: 'screen' },
    });
  });

  it('is said once', () => {
    const one = 'expected exactly one of "every" (12, or 10 min), "first-of-lot" (5) and "acceptance"';
    expectRefused(changed(EVERY, '').replace('  gauging:\n', '  ¤gauging:\n'), one);
    expectRefused(
      changed(EVERY, `${EVERY}    first-of-lot: 5\n`).replace('  gauging:\n', '  ¤gauging:\n'),
      one,
    );
  });

  it.each(['0', '1.5', 'often', '0 s', '-5 min', '3 mm'])('is not said by every: %s', (word) => {
    expectRefused(
      chosen(`every: ¤${word}`),
      `"${word}": expected a whole number of parts from 1 to 1000000, such as 12, or a time with its unit`,
    );
  });

  it('cannot go by deliveries that never come', () => {
    const late = '  late: { disturbs: supplier, stock: sheet, at: 2 h, for: 4 h }\n';
    const here = changed(late, '', chosen('first-of-lot: ¤5'));
    expectRefused(
      changed(
        `    on-hand: 90\n    reorder-at: 70\n    order: 90\n    lead-time: 2 h\n`,
        '    unlimited: true\n',
        here,
      ),
      'the stock "sheet" is unlimited, so no delivery of it ever begins; use "every"',
    );
  });
});

describe('parts that arrive', () => {
  const ARRIVING = `mendline: 1
title: Arrivals
about: Invented.
run: { warm-up: 0 s, length: 1 h, seeds: 1 }
stock: {}
parts: { tray: { features: { edge: { nominal: 9 mm, tolerance: 1 mm, made-at: trimming } } } }
stations:
  coming: { does: arrive, every: 9 s, to: trimming }
  trimming: { does: trim, buffer: 4, cycle: 5 s, to: gauging }
  gauging:
    does: gauge
    buffer: 9
    cycle: 2 s
    first-of-lot: ¤5
    measures: { edge: { repeatability: 0 mm } }
    off-limits: pass
    to: good
policies: { carry on: [] }
`;

  it('belong to no delivery', () => {
    expectRefused(ARRIVING, 'parts that arrive at "coming" belong to no delivery; use "every"');
  });

  it('need a carrier each for a whole lot', () => {
    const lots = changed('first-of-lot: ¤5', 'acceptance: { lot: 8, aql: 1 %, rejected: scrap }', ARRIVING);
    expectRefused(
      `${lots}carriers: { pallet: { number: ¤7, from: trimming } }\n`,
      '7 carriers take 7 parts at once, but "gauging" starts only when 8 are there; give at least 8',
    );
  });
});

describe('an acceptance plan', () => {
  refuses(
    [
      ['aql: 1 %', 'aql: ¤2 %', 'ISO 2859-1 has no plans for this AQL; the nearest it has: 1.5 % and 2.5 %'],
      ['aql: 1 %', 'aql: ¤15 %', 'the nearest it has: 10 %'],
      ['aql: 1 %', 'aql: ¤1', '1 has no unit'],
      ['lot: 9', 'lot: ¤1', 'expected a whole number from 2'],
      [
        'lot: 9',
        'lot: ¤10',
        '10 parts never gather in a buffer of 9; make the lot smaller, or the buffer larger',
      ],
      ['rejected: screen', 'rejected: ¤scren', 'did you mean "screen"?'],
      ['rejected: screen', 'rejected: ¤packing', 'expected one that does rework'],
    ].map(([from, to, ...messages]) => [`${from}`, `${to}`, ...messages] as const),
    unruly(chosen(`acceptance: ${LOT}`)),
  );

  it('has the last word on which parts are gauged', () => {
    expectRefused(
      lot('screen', 'scrap').replace('at: gauging, every: 1', 'at: ¤gauging, every: 1'),
      '"gauging" inspects lots by its acceptance plan, so it cannot gauge one part in so many',
    );
  });

  it('judges by something that has limits', () => {
    expectRefused(
      unruly(changed('        tolerance: 0.2 mm\n', '', chosen(`acceptance: ¤${LOT}`))),
      'nothing that is read here has limits, so every lot would be accepted',
    );
  });
});

describe('a reading', () => {
  it.each([
    [
      '¤bias: 0 mm',
      '"repeatability" is missing: expected a length with its unit, such as 0.02 mm; or "study"',
    ],
    ['repeatability: ¤-0.02 mm', 'not negative'],
    ['repeatability: 0 mm, reproducibility: ¤-1 um', 'not negative'],
    ['repeatability: 0 mm, resolution: ¤0.01', 'has no unit'],
    ['repeatability: 0 mm, takes: ¤1 mm', 'expected a time'],
    [
      'repeatability: 0 mm, guard: ¤0.2 mm',
      'leaves nothing to accept between the limits of "rim", 0.4 mm apart',
    ],
  ])('of { %s } is refused', (keys, message) => {
    const text = reading(keys);
    // A key that is not there is told at the mapping it is missing from.
    expectRefused(keys.startsWith('¤') ? text.replace('{ ¤', '¤{ ') : text, message);
  });

  it('has no guard without limits', () => {
    expectRefused(
      changed(
        'rim: { repeatability: 0.02 mm }',
        'rim: { repeatability: 0.02 mm }\n      tab: { repeatability: 0 mm, guard: ¤1 mm }',
      ),
      '"tab" has no limits to draw in; give it a tolerance, or take "guard" out',
    );
  });

  it('differs between appraisers, where there are several', () => {
    expectRefused(
      chosen('every: 12\n    appraisers: ¤3'),
      'they differ in nothing; give a reading its "reproducibility"',
    );
  });
});

describe('a gauge study', () => {
  const study = (readings: unknown, by = 'anova') =>
    reading(`study: { unit: um, by: ${by}, readings: ${JSON.stringify(readings)} }`);

  // D15, D16: the study of the AIAG manual, here in µm: the figures in mm are a thousandth.
  it.each([
    ['anova', 0.199933, 0.226838, 0.278607],
    ['ranges', 0.201857, 0.229667, 0.26678],
  ])('by %s gives the reading its spreads', (by, repeatability, reproducibility, share) => {
    const { study: found, ...measure } = gaugingOf(study(AIAG_STUDY, by)).measures[0]!;
    expect(measure.repeatability).toBeCloseTo(repeatability / 1000, 9);
    expect(measure.reproducibility).toBeCloseTo(reproducibility / 1000, 9);
    expect(found!.gaugeShare).toBeCloseTo(share, 5);
  });

  const pair = [
    [1, 2],
    [1.1, 2.1],
  ];
  it.each<[string, string, string]>([
    [
      '[[[1, 2], [1, 2]], ¤[[1, 2]]]',
      'anova',
      'expected as many trials as the first appraiser has: 2, not 1',
    ],
    [
      '[[[1, 2], ¤[1]], [[1, 2], [1, 2]]]',
      'anova',
      'expected as many parts as the first trial has: 2, not 1',
    ],
    ['¤[[[1, 2], [1, 2]]]', 'anova', 'a study by anova has 2 to 100 appraisers, but this one has 1'],
    ['¤[[[1, 2]], [[1, 2]]]', 'anova', 'has 2 to 100 trials, but this one has 1'],
    [`¤${JSON.stringify([pair, pair, pair, pair])}`, 'ranges', 'has 2 to 3 appraisers, but this one has 4'],
    ['¤[[[1, 1], [1, 1]], [[1, 1], [1, 1]]]', 'anova', 'all readings are the same'],
    ['[[[1, 2], [1, ¤"two"]], [[1, 2], [1, 2]]]', 'anova', 'expected a number, in the unit of the study'],
    ['[[[1, 2], ¤3], [[1, 2], [1, 2]]]', 'anova', 'expected the readings by appraiser, trial and part'],
  ])('of readings %s by %s is refused', (readings, by, message) => {
    expectRefused(reading(`study: { unit: mm, by: ${by}, readings: ${readings} }`), message);
  });

  it('is in a unit of length, and leaves nothing to be given beside it', () => {
    const readings = JSON.stringify([pair, pair]);
    expectRefused(reading(`study: { unit: ¤kg, readings: ${readings} }`), '"kg" is not known here');
    expectRefused(
      reading(`repeatability: ¤0 mm, study: { unit: mm, readings: ${readings} }`),
      '"study" gives the repeatability already; take one of them out',
    );
  });
});
