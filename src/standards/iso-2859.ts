/** Acceptance quality limits in per cent nonconforming, in the order of the tables' columns. */
const AQLS = [
  0.01, 0.015, 0.025, 0.04, 0.065, 0.1, 0.15, 0.25, 0.4, 0.65, 1, 1.5, 2.5, 4, 6.5, 10,
] as const; // biome-ignore format: one line reads better

/** Code letters with the sample size of each, in the order of the tables' rows. */
const LETTERS = [
  ['A', 2], ['B', 3], ['C', 5], ['D', 8], ['E', 13], ['F', 20], ['G', 32], ['H', 50], ['J', 80], ['K', 125],
  ['L', 200], ['M', 315], ['N', 500], ['P', 800], ['Q', 1250], ['R', 2000], ['S', 3150],
] as const; // biome-ignore format: a table

/** The largest lot of each letter from A on at general inspection level II; larger ones have Q. */
const LARGEST_LOTS = [8, 15, 25, 50, 90, 150, 280, 500, 1200, 3200, 10_000, 35_000, 150_000, 500_000];

/** A lot of one cannot be sampled. */
export const SMALLEST_LOT = 2;

/**
 * The tables repeat along their diagonals: the acceptance number follows from the row plus the column, both counted from
 * 0. Where a diagonal has none, an arrow leads up or down to the next letter that has one.
 */
interface Table {
  readonly accept: Readonly<Record<number, number>>;
  /** Whether the arrow of this diagonal leads to the letter above. */
  readonly leadsUp: (diagonal: number) => boolean;
  /** The first row in which the acceptance number 0 occurs. */
  readonly zeroFrom: number;
}

const MOST = 24;

const TABLES = {
  normal: {
    accept: { 14: 0, 17: 1, 18: 2, 19: 3, 20: 5, 21: 7, 22: 10, 23: 14, [MOST]: 21 },
    leadsUp: (diagonal) => diagonal === 15 || diagonal > MOST,
    zeroFrom: 0,
  },
  tightened: {
    accept: { 15: 0, 18: 1, 19: 2, 20: 3, 21: 5, 22: 8, 23: 12, [MOST]: 18 },
    leadsUp: (diagonal) => diagonal > MOST,
    zeroFrom: 1,
  },
} as const satisfies Record<string, Table>;

export type Severity = keyof typeof TABLES;

/** A single sampling plan: a lot is accepted with at most `accept` nonconforming items in a sample of `sample`. */
export interface SamplingPlan {
  readonly letter: string;
  readonly sample: number;
  readonly accept: number;
}

/** The column of an acceptance quality limit given as a share, -1 when the tables have none. */
const columnOf = (aql: number): number =>
  AQLS.findIndex((percent) => Math.abs(aql * 100 - percent) < 1e-6 * percent);

/** Whether the tables have this acceptance quality limit, a share. Those above 10 % are for nonconformities per 100 items alone. */
export const isAql = (aql: number): boolean => columnOf(aql) >= 0;

/** The acceptance quality limits of the tables next to a share, below and above it, in per cent. */
export function aqlsNear(aql: number): readonly number[] {
  const above = AQLS.findIndex((percent) => percent > aql * 100);
  return above === -1 ? AQLS.slice(-1) : AQLS.slice(Math.max(0, above - 1), above + 1);
}

/**
 * The single sampling plan of ISO 2859-1:1999, general inspection level II, for lots of `lot` items (2 or more) and an
 * acceptance quality limit `aql`, a share that `isAql` knows. A sample as large as the lot or larger is the whole lot,
 * with the acceptance number as it is.
 * Source: tables 1, 2-A and 2-B of the standard, whose single sampling plans are those of MIL-STD-105E, tables I, II-A and
 * II-B.
 * @throws RangeError for a lot or a limit that the tables do not have
 */
export function samplingPlan(lot: number, aql: number, severity: Severity): SamplingPlan {
  const column = columnOf(aql);
  if (column < 0 || !(lot >= SMALLEST_LOT)) throw new RangeError(`no plan for lots of ${lot} at ${aql}`);
  const { accept, leadsUp, zeroFrom }: Table = TABLES[severity];
  const found = LARGEST_LOTS.findIndex((largest) => lot <= largest);
  let row = found === -1 ? LARGEST_LOTS.length : found;
  for (;;) {
    const most = accept[row + column];
    if (most !== undefined && (most > 0 || row >= zeroFrom)) {
      const [letter, sample] = LETTERS[row]!;
      return { letter, sample: Math.min(sample, lot), accept: most };
    }
    // Nothing stands above the first row.
    row += row > 0 && leadsUp(row + column) ? -1 : 1;
  }
}
