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

/** A pair with what is looked up of it for every part that waits. */
interface Look {
  readonly pair: Pair;
  readonly mate: number;
  readonly reading: number;
  readonly aim: number;
}

const looksAt = (pairs: readonly Pair[]): Look[] =>
  pairs.map((pair) => {
    const { reading, spec } = pair.feature;
    return { pair, mate: pair.mate, reading, aim: spec.aim };
  });

/** The reading of a part; one without is taken to be as designed. */
function sizeOf({ reading, aim }: Look, row: number, known: boolean, parts: PartTable): number {
  const size = known ? parts.get(row, reading) : aim;
  return Number.isNaN(size) ? aim : size;
}

/** Goes by the margin of the worst pair. */
function byMargin(of: (margin: number) => number, { parts, pairs, known }: Readings): Rank {
  const looks = looksAt(pairs);
  return (row, mates) => {
    const read = known(row);
    let worst = Number.POSITIVE_INFINITY;
    for (let i = 0; i < looks.length; i++) {
      const look = looks[i]!;
      const left = margin(look.pair, clearance(look.pair, sizeOf(look, row, read, parts), mates[look.mate]!));
      if (left < worst) worst = left;
    }
    return of(worst);
  };
}

/** Selective assembly: sizes are sorted into classes about their aims, and like goes with like. */
function byClass(number: number, width: number, { parts, pairs, known }: Readings): Rank {
  const classOf = (deviation: number) =>
    Math.min(Math.max(Math.floor(deviation / width + number / 2), 0), number - 1);
  const looks = looksAt(pairs);
  return (row, mates) => {
    const read = known(row);
    let apart = 0;
    for (const look of looks) {
      const part = classOf(sizeOf(look, row, read, parts) - look.aim);
      apart += Math.abs(part - classOf(mates[look.mate]! - look.pair.mateAim));
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
