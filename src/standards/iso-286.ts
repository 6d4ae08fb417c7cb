/** How far a size may lie from its nominal size, mm. */
export interface Deviations {
  readonly lower: number;
  readonly upper: number;
}

/** Bands of nominal sizes by their largest, mm. */
const BANDS = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500];

/** The largest nominal size that the tables have, mm. */
export const LARGEST_NOMINAL = 500;

/** Standard tolerances by grade and band, µm: ISO 286-1:2010, table 1. */
const TOLERANCES = {
  5: [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27],
  6: [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40],
  7: [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63],
  8: [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97],
  9: [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155],
  10: [40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250],
  11: [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400],
  12: [100, 120, 150, 180, 210, 250, 300, 350, 400, 460, 520, 570, 630],
  13: [140, 180, 220, 270, 330, 390, 460, 540, 630, 720, 810, 890, 970],
} as const;

type Grade = keyof typeof TOLERANCES;
const GRADES = Object.keys(TOLERANCES).map(Number) as Grade[];

/** Fundamental deviations by band, µm: upper ones of the shafts below the nominal size; the holes D to H mirror them. */
const BELOW = {
  d: [-20, -30, -40, -50, -65, -80, -100, -120, -145, -170, -190, -210, -230],
  e: [-14, -20, -25, -32, -40, -50, -60, -72, -85, -100, -110, -125, -135],
  f: [-6, -10, -13, -16, -20, -25, -30, -36, -43, -50, -56, -62, -68],
  g: [-2, -4, -5, -6, -7, -9, -10, -12, -14, -15, -17, -18, -20],
  h: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
} as const;

/** The same, lower ones of the shafts above the nominal size. Those of k hold up to IT7; from IT8 on it is 0. */
const ABOVE = {
  k: [0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5],
  m: [2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23],
  n: [4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40],
  p: [6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68],
} as const;

const HOLES = ['H', 'JS', 'G', 'F', 'E', 'D'];
const SHAFTS = ['h', 'js', 'g', 'f', 'e', 'd', 'k', 'm', 'n', 'p'];

/** The tolerance classes that the tables have: holes in upper case, shafts in lower case, with the grade behind. */
export const TOLERANCE_CLASSES: readonly string[] = [...HOLES, ...SHAFTS].flatMap((letter) =>
  GRADES.map((grade) => `${letter}${grade}`),
);

/** Whether a tolerance class is one of holes (internal features). */
export const isHoleClass = (toleranceClass: string): boolean => /^[A-Z]/.test(toleranceClass);

function split(toleranceClass: string): { letter: string; grade: number } | undefined {
  const [, letter, grade] = /^([A-Za-z]+)(\d+)$/.exec(toleranceClass) ?? [];
  return letter === undefined ? undefined : { letter, grade: Number(grade) };
}

/** Of the classes in the tables, the one with the same letter and the nearest grade; undefined for another letter. */
export function nearestGrade(toleranceClass: string): string | undefined {
  const given = split(toleranceClass);
  if (!given || ![...HOLES, ...SHAFTS].includes(given.letter)) return undefined;
  return given.letter + Math.min(Math.max(given.grade, GRADES[0]!), GRADES.at(-1)!);
}

/** Limit deviations of a shaft class, µm. */
function ofShaft(letter: string, grade: Grade, band: number): [number, number] {
  const tolerance = TOLERANCES[grade][band]!;
  if (letter === 'js') return [-tolerance / 2, tolerance / 2];
  if (Object.hasOwn(BELOW, letter)) {
    const upper = BELOW[letter as keyof typeof BELOW][band]!;
    return [upper - tolerance, upper];
  }
  const lower = letter === 'k' && grade > 7 ? 0 : ABOVE[letter as keyof typeof ABOVE][band]!;
  return [lower, lower + tolerance];
}

/**
 * The limit deviations of a tolerance class of ISO 286-1:2010 at a nominal size, mm. For js and JS half the tolerance
 * to either side, without the rounding that the standard allows.
 * @param nominal above 0 and up to LARGEST_NOMINAL, mm
 * @param toleranceClass one of TOLERANCE_CLASSES
 * @throws RangeError for any other
 */
export function limitDeviations(nominal: number, toleranceClass: string): Deviations {
  const given = split(toleranceClass);
  const band = BANDS.findIndex((most) => nominal <= most);
  if (!given || !TOLERANCE_CLASSES.includes(toleranceClass) || !(nominal > 0) || band < 0)
    throw new RangeError(`no limits for ${toleranceClass} at ${nominal} mm`);
  const [lower, upper] = ofShaft(given.letter.toLowerCase(), given.grade as Grade, band);
  const micron = 1e-3;
  // A hole is the shaft of the same letter mirrored. Adding 0 keeps a minus off the zero.
  return isHoleClass(toleranceClass)
    ? { lower: -upper * micron + 0, upper: -lower * micron + 0 }
    : { lower: lower * micron, upper: upper * micron };
}
