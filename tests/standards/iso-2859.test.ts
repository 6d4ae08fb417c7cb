import { describe, expect, it } from 'vitest';
import { aqlsNear, isAql, type Severity, samplingPlan } from '../../src/standards/iso-2859.ts';

// Rejection numbers (one more than the acceptance number) by AQL, a dot where an arrow stands, as printed for general
// level II in tables 1-A and 1-B of a facilities guide of the National Institute of Building Sciences
// (nibs.org, DPW_AC/AC-TABLE.ASC), which takes them from MIL-STD-105E, tables I, II-A and II-B. Its column for 15 is left
// out, and of the second table the rows that the copy at hand has. The single plans of ISO 2859-1:1999 are the same.
const COLUMNS = [0.65, 1, 1.5, 2.5, 4, 6.5, 10];
const NORMAL = `
2 8 A 2 . . . . . 1 .
9 15 B 3 . . . . 1 . .
16 25 C 5 . . . 1 . . 2
26 50 D 8 . . 1 . . 2 3
51 90 E 13 . 1 . . 2 3 4
91 150 F 20 1 . . 2 3 4 6
151 280 G 32 . . 2 3 4 6 8
281 500 H 50 . 2 3 4 6 8 11
501 1200 J 80 2 3 4 6 8 11 15
1201 3200 K 125 3 4 6 8 11 15 22
3201 10000 L 200 4 6 8 11 15 22 .
10001 35000 M 315 6 8 11 15 22 . .
35001 150000 N 500 8 11 15 22 . . .
150001 500000 P 800 11 15 22 . . . .
500001 1000000 Q 1250 15 22 . . . . .`;
const TIGHTENED = `
2 8 A 2 . . . . . . .
9 15 B 3 . . . . . 1 .
16 25 C 5 . . . . 1 . .
26 50 D 8 . . . 1 . . 2
51 90 E 13 . . 1 . . 2 3
91 150 F 20 . 1 . . 2 3 4
151 280 G 32 1 . . 2 3 4 6
281 500 H 50 . . 2 3 4 6 9
501 1200 J 80 . 2 3 4 6 9 13
1201 3200 K 125 2 3 4 6 9 13 19
3201 10000 L 200 3 4 6 9 13 19 .`;

const rowsOf = (table: string) =>
  table
    .trim()
    .split('\n')
    .map((line) => line.split(' '));

describe('a single sampling plan of ISO 2859-1 at level II', () => {
  it.each([
    ['normal', NORMAL],
    ['tightened', TIGHTENED],
  ] as const)('is as printed for %s inspection', (severity, table) => {
    for (const [from, to, letter, size, ...numbers] of rowsOf(table)) {
      for (const [i, number] of numbers.entries()) {
        for (const lot of [Number(from), Number(to)]) {
          const { sample, ...plan } = samplingPlan(lot, COLUMNS[i]! / 100, severity);
          const where = `${severity}, lot ${lot}, AQL ${COLUMNS[i]}`;
          if (number === '.') expect(plan.letter, where).not.toBe(letter);
          else
            expect({ ...plan, sample }, where).toEqual({
              letter,
              accept: Number(number) - 1,
              sample: Math.min(lot, Number(size)),
            });
        }
      }
    }
  });

  // The arrows of the printed tables followed by hand to the first plan below or above.
  it.each<[number, number, Severity, string, number, number]>([
    [200, 1, 'normal', 'H', 50, 1],
    [200, 0.65, 'normal', 'F', 20, 0],
    [600, 0.4, 'normal', 'K', 125, 1],
    [20, 0.65, 'normal', 'F', 20, 0],
    [20_000, 10, 'normal', 'K', 125, 21],
    // From memory: no plan stands above letter A, so the arrow leads down; the copy at hand prints one that leads up.
    [8, 10, 'normal', 'C', 5, 1],
    [400, 0.65, 'tightened', 'K', 125, 1],
    [600, 0.65, 'tightened', 'K', 125, 1],
    [100, 0.65, 'tightened', 'G', 32, 0],
    // From memory: letter S exists for this cell of table 2-B alone.
    [1_000_000, 0.025, 'tightened', 'S', 3150, 1],
    [1_000_000, 0.025, 'normal', 'R', 2000, 1],
  ])(
    'for lots of %d at AQL %d %% by arrow, %s, has letter %s',
    (lot, aql, severity, letter, size, accept) => {
      expect(samplingPlan(lot, aql / 100, severity)).toEqual({ letter, sample: size, accept });
    },
  );

  // D19 and D20 of the published rows: ISO 2859-1:1999, tables 1 and 2-A.
  it('is J, 80, 2 for lots of 1000 and H, 50, 1 for lots of 400 at AQL 1 %', () => {
    expect(samplingPlan(1000, 0.01, 'normal')).toEqual({ letter: 'J', sample: 80, accept: 2 });
    expect(samplingPlan(400, 0.01, 'normal')).toEqual({ letter: 'H', sample: 50, accept: 1 });
  });

  it('takes the whole lot where the sample would be as large', () => {
    expect(samplingPlan(4, 0.01, 'normal')).toEqual({ letter: 'E', sample: 4, accept: 0 });
  });

  it('does not exist off the tables', () => {
    expect(isAql(0.0065)).toBe(true);
    expect(isAql(0.02)).toBe(false);
    expect(aqlsNear(0.02)).toEqual([1.5, 2.5]);
    expect(aqlsNear(0.00001)).toEqual([0.01]);
    expect(aqlsNear(0.15)).toEqual([10]);
    expect(() => samplingPlan(1, 0.01, 'normal')).toThrow(RangeError);
    expect(() => samplingPlan(100, 0.02, 'normal')).toThrow(RangeError);
  });
});
