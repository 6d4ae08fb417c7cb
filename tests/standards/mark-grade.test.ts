import { describe, expect, it } from 'vitest';
import {
  GRADES,
  gradeOf,
  type MarkParameter,
  parameterGrade,
  scanGrade,
  symbolGrade,
  unusedErrorCorrection,
} from '../../src/standards/mark-grade.ts';

describe('the grade of one parameter', () => {
  // M01, M02: ISO/IEC 15415 and 16022, as a reader's manual and a page on the symbol give them.
  // M03: ISO/IEC 15415, from memory.
  it.each<[string, MarkParameter, number[], number]>([
    ['M01', 'contrast', [0.7, 0.55, 0.4, 0.2], -1],
    ['M02', 'axialNonUniformity', [0.06, 0.08, 0.1, 0.12], 1],
    ['M03', 'unusedErrorCorrection', [0.62, 0.5, 0.37, 0.25], -1],
    ['M03', 'gridNonUniformity', [0.38, 0.5, 0.63, 0.75], 1],
    ['M03', 'modulation', [0.5, 0.4, 0.3, 0.2], -1],
  ])('%s: %s changes at its limits, which belong to the better grade', (_id, parameter, limits, worse) => {
    for (const [i, limit] of limits.entries()) {
      expect(parameterGrade(parameter, limit)).toBe(4 - i);
      expect(parameterGrade(parameter, limit + worse * 1e-6)).toBe(3 - i);
    }
  });
});

describe('the grade of a mark', () => {
  // M04: ISO/IEC 15415, clause 5.1: the lowest parameter grades a scan, the mean over scans the symbol.
  it('M04: is the mean over scans of the lowest grade in each', () => {
    const scans = [
      [4, 3, 4, 3],
      [4, 4, 3, 2],
      [4, 4, 4, 4],
    ].map(scanGrade);
    expect(scans).toEqual([3, 2, 4]);
    expect(symbolGrade(scans)).toBe(3);
  });

  // The ranges of the letters: ISO/IEC 15415, from memory.
  it.each([
    [4, 'A'],
    [3.5, 'A'],
    [3.49, 'B'],
    [2.5, 'B'],
    [2.49, 'C'],
    [1.5, 'C'],
    [1.49, 'D'],
    [0.5, 'D'],
    [0.49, 'F'],
    [0, 'F'],
  ])('of %d is called %s', (symbol, letter) => {
    expect(GRADES[gradeOf(symbol)]).toBe(letter);
  });
});

// M06: ISO/IEC 15415: no erasures, 24 check words.
it.each([
  [0, 1],
  [3, 0.75],
  [6, 0.5],
])('M06: %d wrong codewords leave %d of the error correction unused', (errors, unused) => {
  expect(unusedErrorCorrection(0, errors, 24)).toBeCloseTo(unused, 12);
});
