/** Grades of a mark, the best first. */
export const GRADES = ['A', 'B', 'C', 'D', 'F'] as const;

/** The least, or for what should be low the largest, value that still earns A, B, C and D; shares of 1. */
interface Ladder {
  readonly better: 'higher' | 'lower';
  readonly limits: readonly [number, number, number, number];
}

/**
 * What a verifier measures of a two-dimensional mark, with the limits of its grades.
 * Source: ISO/IEC 15415, with ISO/IEC 16022 for axial non-uniformity and unused error correction. The limits of
 * modulation, grid non-uniformity and unused error correction are from memory.
 */
export const MARK_LADDERS = {
  contrast: { better: 'higher', limits: [0.7, 0.55, 0.4, 0.2] },
  modulation: { better: 'higher', limits: [0.5, 0.4, 0.3, 0.2] },
  axialNonUniformity: { better: 'lower', limits: [0.06, 0.08, 0.1, 0.12] },
  gridNonUniformity: { better: 'lower', limits: [0.38, 0.5, 0.63, 0.75] },
  unusedErrorCorrection: { better: 'higher', limits: [0.62, 0.5, 0.37, 0.25] },
} as const satisfies Record<string, Ladder>;

export type MarkParameter = keyof typeof MARK_LADDERS;

/** The grade that one measured value earns, from 4 for A to 0 for F. */
export function parameterGrade(parameter: MarkParameter, value: number): number {
  const { better, limits } = MARK_LADDERS[parameter];
  for (let i = 0; i < limits.length; i++) {
    if (better === 'higher' ? value >= limits[i]! : value <= limits[i]!) return limits.length - i;
  }
  return 0;
}

/** The grade of one scan: the lowest that a parameter has (ISO/IEC 15415). */
export const scanGrade = (parameters: readonly number[]): number => Math.min(...parameters);

/** The grade of the symbol: the mean over its scans (ISO/IEC 15415). */
export const symbolGrade = (scans: readonly number[]): number =>
  scans.reduce((sum, grade) => sum + grade, 0) / scans.length;

/** The place in `GRADES` of a symbol grade: A from 3.5 up, B from 2.5, C from 1.5, D from 0.5 (limits from memory). */
export const gradeOf = (symbol: number): number => GRADES.length - 1 - Math.floor(symbol + 0.5);

/** The share of the error correction that a scan left unused, without allowance for misdecoding (ISO/IEC 15415). */
export const unusedErrorCorrection = (erasures: number, errors: number, checkWords: number): number =>
  1 - (erasures + 2 * errors) / checkWords;
