import type { MatchSpec } from '../scenario/matching.ts';
import { clearance, margin, type Pair } from './fit.ts';
import type { PartTable } from './part-table.ts';

/**
 * How well a part suits mates, going by readings (mm) alone. The higher the better; from 0 on it promises to fit.
 * @param mates readings of the mates' features
 */
export type Rank = (row: number, mates: Float64Array) => number;

/** What readings of parts are kept in, and whose can be looked up. */
export interface Readings {
  readonly parts: PartTable;
  readonly pairs: readonly Pair[];
  /** Whether the part's mark can be read. */
  readonly known: (row: number) => boolean;
}

/** The reading of a part; one without is taken to be as designed. */
function sizeOf({ feature }: Pair, row: number, known: boolean, parts: PartTable): number {
  const reading = known ? parts.get(row, feature.reading) : Number.NaN;
  return Number.isNaN(reading) ? feature.spec.aim : reading;
}

/** Goes by the margin of the worst pair. */
function byMargin(of: (margin: number) => number, { parts, pairs, known }: Readings): Rank {
  return (row, mates) => {
    const read = known(row);
    let worst = Number.POSITIVE_INFINITY;
    for (const pair of pairs) {
      const size = sizeOf(pair, row, read, parts);
      worst = Math.min(worst, margin(pair, clearance(pair, size, mates[pair.mate]!)));
    }
    return of(worst);
  };
}

/** Selective assembly: sizes are sorted into classes about their aims, and like goes with like. */
function byClass(number: number, width: number, { parts, pairs, known }: Readings): Rank {
  const classOf = (deviation: number) =>
    Math.min(Math.max(Math.floor(deviation / width + number / 2), 0), number - 1);
  return (row, mates) => {
    const read = known(row);
    let apart = 0;
    for (const pair of pairs) {
      const part = classOf(sizeOf(pair, row, read, parts) - pair.feature.spec.aim);
      apart += Math.abs(part - classOf(mates[pair.mate]! - pair.mateAim));
    }
    return -apart;
  };
}

/** The highest rank that a rule can give: a part that has it is chosen at once, for it is the oldest of equals. */
export const highestRank = ({ rule }: MatchSpec): number =>
  rule === 'first-fit' || rule === 'classes' ? 0 : Number.POSITIVE_INFINITY;

/** The rank that a rule gives. Any part that promises the guard ranks above every part that does not. */
export function rankOf({ rule, guard = 0, classes }: MatchSpec, readings: Readings): Rank {
  switch (rule) {
    case 'hardest-fit':
      // Easy parts are kept for difficult mates.
      return byMargin((worst) => (worst >= guard ? 1 / (1 + worst) : worst - guard), readings);
    case 'best-margin':
      return byMargin((worst) => worst - guard, readings);
    case 'first-fit':
      return byMargin((worst) => Math.min(0, worst - guard), readings);
    case 'classes':
      return byClass(classes!.number, classes!.width, readings);
  }
}
