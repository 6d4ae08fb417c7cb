import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import type { SpecOf } from '../../src/scenario/stations.ts';
import { changed, expectRefused, refuses, SOUND } from './sample.ts';

const MARKING = 'takes-hold: 99 %, to: gauging';
const READER = 'reader: { reads: 99 %, unread: { by-hand: 12 s } }';

const scenarioWith = (from: string, to: string): Scenario => parseScenario(changed(from, to), 'cell.yaml');
const station = <Kind extends 'mark' | 'assemble'>({ stations }: Scenario, kind: Kind) =>
  stations.find(({ does }) => does === kind) as SpecOf<Kind>;
const readerOf = (reader: string) =>
  station(scenarioWith(READER, `reader: { ${reader} }`), 'assemble').reader!;

describe('the grades of a marking station', () => {
  it('are shares in the order A, B, C, D, F; those left out are zero', () => {
    const { grades } = station(
      scenarioWith(MARKING, `takes-hold: 99 %, grades: { A: 80 %, D: 15 %, F: 5 % }, to: gauging`),
      'mark',
    );
    expect(grades).toEqual([0.8, 0, 0, 0.15, 0.05]);
  });

  refuses([
    [
      MARKING,
      'takes-hold: 99 %, grades: ¤{ A: 80 %, B: 19 % }, to: gauging',
      'the shares sum to 99 %; every mark that took has a grade, so they must sum to 100 %',
    ],
    [MARKING, 'takes-hold: 99 %, grades: { A: 100 %, ¤E: 0 % }, to: gauging', 'unknown key "E"'],
    [MARKING, 'takes-hold: 99 %, grades: { A: ¤1 }, to: gauging', '1 has no unit'],
    [
      MARKING,
      'takes-hold: 99 %, grades: ¤{ A: 100 % }, quality: { contrast: { mean: 60 % } }, to: gauging',
      '"quality" decides the grades; take out "grades" or "quality"',
    ],
    [
      MARKING,
      'takes-hold: 99 %, quality: ¤{ scans: 4 }, to: gauging',
      'expected at least one of contrast, modulation',
    ],
    [
      MARKING,
      'takes-hold: 99 %, quality: { contrast: { mean: 60 %, sd: ¤-2 % } }, to: gauging',
      '-2 % is not allowed: a share here is not negative',
    ],
    [
      MARKING,
      'takes-hold: 99 %, quality: { contrast: { mean: 60 % }, ¤modulaton: { mean: 60 % } }, to: gauging',
      'did you mean "modulation"?',
    ],
    [
      MARKING,
      'takes-hold: 99 %, quality: { scans: ¤0, contrast: { mean: 60 % } }, to: gauging',
      'expected a whole number from 1 to 20',
    ],
    [
      MARKING,
      'takes-hold: 99 %, quality: { unused-error-correction: { symbol: ¤data-matrix 24x25, wrong-codewords: 3 % } }, to: gauging',
      'did you mean "data-matrix 24x24"?',
    ],
  ]);
});

describe('a reader', () => {
  it('reads every grade alike, or each with its own chance and F never unless said otherwise', () => {
    expect(readerOf('reads: 99 %, unread: pass').chances).toEqual([0.99, 0.99, 0.99, 0.99, 0.99]);
    expect(readerOf('reads: { A: 99 %, B: 98 %, C: 90 %, D: 75 % }, unread: pass').chances).toEqual([
      ...[0.99, 0.98, 0.9, 0.75, 0],
    ]);
    expect(readerOf('reads: { A: 99 %, B: 98 %, C: 90 %, D: 70 %, F: 5 % }, unread: pass').chances[4]).toBe(
      0.05,
    );
  });

  it('goes by the codewords of a symbol, none of which is right at grade F unless said otherwise', () => {
    const { chances } = readerOf(
      'symbol: data-matrix 24x24, wrong-codewords: { A: 5 %, B: 10 %, C: 15 %, D: 20 % }, unread: pass',
    );
    // M05: the binomial tail beyond 12 of 60 wrong codewords.
    for (const [i, unread] of [6.84958e-6, 0.00568101, 0.106246, 0.42356, 1].entries())
      expect(1 - chances[i]!).toBeCloseTo(unread, 6);
  });

  it('tries once and adds no time unless said otherwise, and marks a part anew once', () => {
    expect(readerOf('reads: 99 %, unread: scrap')).toMatchObject({
      ...{ tries: 1, retry: 0 },
      unread: { byHand: null, reMark: null, scraps: true },
    });
    expect(readerOf('reads: 99 %, unread: { re-mark: marking }').unread).toEqual({
      ...{ byHand: null, scraps: false, reMark: { station: 'marking', limit: 1 } },
    });
    expect(readerOf('reads: 99 %, unread: { re-mark: marking, limit: 3, afterwards: scrap }').unread).toEqual(
      { byHand: null, scraps: true, reMark: { station: 'marking', limit: 3 } },
    );
  });

  const reader = (keys: string): [string, string] => [READER, `reader: ${keys}`];
  refuses([
    [...reader('¤{ unread: pass }'), 'expected "reads" (such as 99.5 %), or "symbol" with "wrong-codewords"'],
    [...reader('{ reads: ¤101 %, unread: pass }'), '101 % is not allowed: a share here is from 0 % to 100 %'],
    [...reader('{ reads: ¤{ A: 99 %, B: 98 %, C: 90 % }, unread: pass }'), '"D" is missing'],
    [
      ...reader('{ reads: ¤99 %, symbol: data-matrix 10x10, wrong-codewords: 2 %, unread: pass }'),
      '"symbol" decides what is read; take out "reads" or "symbol"',
    ],
    [
      ...reader('{ reads: 99 %, wrong-codewords: ¤2 %, unread: pass }'),
      '"wrong-codewords" goes with "symbol"; take it out',
    ],
    [
      ...reader('{ symbol: ¤data-matrix 10x10, unread: pass }'),
      '"symbol" needs "wrong-codewords", such as 5 %',
    ],
    [
      ...reader('{ symbol: ¤data-matrix 10x11, wrong-codewords: 2 %, unread: pass }'),
      '"data-matrix 10x11" is not known here; did you mean "data-matrix 10x10"?',
    ],
    [...reader('{ reads: 99 %, tries: ¤0, unread: pass }'), 'expected a whole number from 1 to 20'],
    [...reader('{ reads: 99 %, retry: ¤-1 s, unread: pass }'), 'a time here is not negative'],
    [...reader('{ reads: 99 %, unread: ¤pas }'), 'did you mean "pass"?'],
    [
      ...reader('{ reads: 99 %, unread: ¤by-hand }'),
      'known here: pass, scrap, { by-hand: 12 s }, { re-mark: STATION }',
    ],
    [
      ...reader('{ reads: 99 %, unread: ¤{} }'),
      'expected exactly one of "by-hand" (such as 12 s) and "re-mark"',
    ],
    [
      ...reader('{ reads: 99 %, unread: ¤{ by-hand: 12 s, re-mark: marking } }'),
      'expected exactly one of "by-hand" (such as 12 s) and "re-mark"',
    ],
    [
      ...reader('{ reads: 99 %, unread: { by-hand: 12 s, limit: ¤2 } }'),
      '"limit" goes with "re-mark"; take it out',
    ],
    [...reader('{ reads: 99 %, unread: { re-mark: ¤marker } }'), 'did you mean "marking"?'],
    [
      ...reader('{ reads: 99 %, unread: { re-mark: ¤packing } }'),
      '"packing" is a station that does work; expected one that does mark',
    ],
    [...reader('{ reads: 99 %, unread: { re-mark: marking, limit: ¤0 } }'), 'expected a whole number from 1'],
  ]);

  it('may send parts to a station that marks nothing else, which is fed thereby', () => {
    const own = changed(
      READER,
      'reader: { reads: 99 %, unread: { re-mark: second } }',
      changed(
        '  packing: { does',
        '  second: { does: mark, buffer: 4, cycle: 4 s, takes-hold: 99 %, to: gauging }\n  packing: { does',
      ),
    );
    expect(() => parseScenario(own, 'cell.yaml')).not.toThrow();
    expectRefused(
      changed('re-mark: second', 're-mark: marking', own).replace('second: {', 'second: ¤{'),
      'nothing feeds "second"',
    );
  });

  it('that sends parts back to where they take a carrier is refused with the carriers', () => {
    const carriers = (from: string) =>
      changed('disturbances:\n', `carriers: { nest: { number: 9, from: ${from} } }\ndisturbances:\n`);
    expect(() => parseScenario(carriers('marking'), 'cell.yaml')).not.toThrow();
    expectRefused(
      changed(READER, 'reader: { reads: 99 %, unread: { re-mark: marking } }', carriers('¤marking')),
      'parts come back to "marking" and would take a second carrier',
    );
  });
});

describe('a disturbance of marks', () => {
  const graded = changed(MARKING, `takes-hold: 99 %, grades: { A: 100 % }, to: gauging`);
  const FADED = 'station: marking, takes-hold: 60 %';

  it('may change the grades, the share that takes, or both', () => {
    const of = (keys: string) =>
      parseScenario(changed(FADED, `station: marking, ${keys}`, graded), 'cell.yaml').disturbances.find(
        ({ disturbs }) => disturbs === 'marks',
      );
    expect(of('grades: { C: 40 %, F: 60 % }')).toMatchObject({ grades: [0, 0, 0.4, 0, 0.6] });
    expect(of('takes-hold: 60 %, grades: { F: 100 % }')).toMatchObject({ takesHold: { value: 0.6 } });
  });

  it('changes something', () => {
    expectRefused(
      changed(
        'faded: { disturbs: marks, station: marking, takes-hold: 60 %, ',
        'faded: ¤{ disturbs: marks, station: marking, ',
      ),
      '"takes-hold" is missing: expected a share with its unit (%), such as 2 %, or "grades"',
    );
  });

  it('gives shares that sum to the whole', () => {
    expectRefused(changed(FADED, 'station: marking, grades: ¤{ F: 90 % }', graded), 'the shares sum to 90 %');
  });
});

it('the sound scenario is as it was', () => {
  expect(station(parseScenario(SOUND, 'cell.yaml'), 'mark').grades).toBeUndefined();
});
