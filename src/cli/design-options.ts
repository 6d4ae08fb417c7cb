import { clearFraction, DESIGNS, type DesignKind, fractionsOf } from '../experiment/varied/design.ts';
import { type Factor, numbersOf } from '../experiment/varied/factor.ts';
import { counted, listed } from '../report/words.ts';
import { suggestion } from '../scenario/nearest.ts';
import { UsageError } from './usage-error.ts';

/** Beyond so many points nobody looks at them one by one; see `MOST_RUNS`. */
const MOST_POINTS = 10_000;
/** All runs are kept until the report is made, and it holds each. */
const MOST_RUNS = 100_000;
/** Points of a Latin hypercube for each factor where none are said; J. L. Loeppky, J. Sacks and W. J. Welch (2009), Technometrics 51, 366-376. */
const POINTS_EACH = 10;
/** Paths of screening where none are said. */
const PATHS = 10;

interface Given {
  readonly design?: string;
  readonly points?: number;
  readonly paths?: number;
}

const LESS = 'give fewer values, or take a part of them by --design fraction, latin or screen';

function kindOf(design = 'all'): DesignKind {
  const found = DESIGNS.find((kind) => kind === design);
  if (found) return found;
  throw new UsageError(`--design "${design}" is no design${suggestion(design, DESIGNS)}`);
}

function refuseStray(kind: DesignKind, { points, paths }: Given): void {
  if (points !== undefined && kind !== 'fraction' && kind !== 'latin')
    throw new UsageError(`--points goes with --design fraction or latin, not with ${kind}`);
  if (paths !== undefined && kind !== 'screen')
    throw new UsageError(`--paths goes with --design screen, not with ${kind}`);
}

function combinationsOf(factors: readonly Factor[], seeds: number): number {
  const open = factors.find(({ range }) => range !== null);
  if (open)
    throw new UsageError(
      `--over "${open.at}" is a range, of which all combinations take some values: say "by" and a step behind it, or list them`,
    );
  const counts = factors.map(({ levels }) => levels.length);
  const points = counts.reduce((product, n) => product * n, 1);
  if (points > MOST_POINTS)
    throw new UsageError(
      `${counts.join(' x ')} values are ${points} combinations and ${points * seeds} runs; at most ${MOST_POINTS} combinations are taken: ${LESS}`,
    );
  return points;
}

function pointsOfFraction(factors: readonly Factor[], points: number | undefined): number {
  const many = factors.find(({ levels }) => levels.length !== 2);
  if (many)
    throw new UsageError(
      `--design fraction takes two values of each, a low and a high one; ${many.name} has ${many.levels.length}`,
    );
  const known = fractionsOf(factors.length);
  const remedy = 'vary by --design all, screen or latin';
  if (known.length === 0)
    throw new UsageError(
      `fractions are known here of 3 to 8 things varied, and there ${factors.length === 1 ? 'is' : 'are'} ${factors.length}; ${remedy}`,
    );
  if (points === undefined) return clearFraction(factors.length);
  if (!known.includes(points)) {
    const counts = known.map(String);
    throw new UsageError(
      `--points ${points} is no fraction of ${factors.length} things varied; there are those of ${listed(counts)} points`,
    );
  }
  return points;
}

function pointsOfLatin(factors: readonly Factor[], points: number | undefined): number {
  const least = factors.length + 2;
  if (points === undefined) return Math.max(POINTS_EACH * factors.length, least);
  if (points < least)
    throw new UsageError(
      `--points ${points} are too few to tell ${counted(factors.length, 'effect')}; take ${least} or more, better ${POINTS_EACH * factors.length}`,
    );
  return points;
}

/**
 * What kind of design, and of how many points or paths; refused before anything is built where it is too large.
 * @throws UsageError
 */
export function designOptions(
  factors: readonly Factor[],
  given: Given,
  seeds: number,
): { kind: DesignKind; count: number } {
  const kind = kindOf(given.design);
  refuseStray(kind, given);
  if (kind === 'latin' || kind === 'screen') {
    const other = factors.find((factor) => numbersOf(factor) === null);
    if (other)
      throw new UsageError(
        `--design ${kind} goes by numbers, and ${other.name} has none, or in several units; vary it by --design all`,
      );
  }
  if (kind === 'screen') {
    const listedOnes = factors.find(({ range, levels }) => range === null && levels.length !== 2);
    if (listedOnes)
      throw new UsageError(
        `--design screen goes from end to end of a range; write that of ${listedOnes.name} as in 4 to 24`,
      );
  }
  const counts: Record<DesignKind, () => number> = {
    all: () => combinationsOf(factors, seeds),
    fraction: () => pointsOfFraction(factors, given.points),
    latin: () => pointsOfLatin(factors, given.points),
    screen: () => given.paths ?? PATHS,
  };
  const count = counts[kind]();
  const points = kind === 'screen' ? count * (factors.length + 1) : count;
  if (points > MOST_POINTS)
    throw new UsageError(`these are ${points} points; at most ${MOST_POINTS} are taken: take fewer`);
  if (points * seeds > MOST_RUNS)
    throw new UsageError(
      `${points} points under ${counted(seeds, 'seed')} are ${points * seeds} runs; at most ${MOST_RUNS} are taken: name fewer seeds by --seeds, or ${LESS}`,
    );
  return { kind, count };
}
