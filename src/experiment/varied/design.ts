import { Streams } from '../../kernel/streams.ts';
import { type Trajectory, trajectories } from '../../statistics/designs/elementary-effects.ts';
import { fullFactorial } from '../../statistics/designs/full-factorial.ts';
import { latinHypercube } from '../../statistics/designs/latin-hypercube.ts';
import { boundFactor } from '../../statistics/designs/linear-effects.ts';
import {
  type Fraction,
  twoLevelFraction,
  usualFractions,
} from '../../statistics/designs/two-level-fraction.ts';
import { type Factor, type Level, levelAt, type Point, shareOf } from './factor.ts';

export const DESIGNS = ['all', 'fraction', 'latin', 'screen'] as const;
export type DesignKind = (typeof DESIGNS)[number];

/** Which settings are run. */
export interface Design {
  readonly kind: DesignKind;
  readonly points: readonly Point[];
  /** By point and factor: the number of the level in all combinations, the sign in a fraction, else from 0 to 1. */
  readonly coordinates: readonly (readonly number[])[];
  /** The products of factors that are the same at all points of a fraction; null elsewhere. */
  readonly fraction: Fraction | null;
  /** How many points one path of screening has; else all of them. */
  readonly perPath: number;
}

/** Values of the grid that paths go over; the usual choice (Morris, 1991). */
const GRID = 4;

/** The same draws for the same question. */
const drawn = (purpose: DesignKind) => new Streams(1).of(`vary/${purpose}`);

function combined(factors: readonly Factor[]): Design {
  const coordinates = fullFactorial(factors.map(({ levels }) => levels.length));
  const points = coordinates.map((row) => row.map((level, i) => factors[i]!.levels[level]!));
  return { kind: 'all', points, coordinates, fraction: null, perPath: points.length };
}

/** How many points the fractions of so many factors have, in rising order; none where none are known. */
export const fractionsOf = (factors: number): number[] => usualFractions(factors).map(({ points }) => points);

/** The points of the smallest fraction that keeps main effects apart from interactions of two; else of the smallest there is. */
export function clearFraction(factors: number): number {
  const known = usualFractions(factors);
  const clear = known.find(({ generators }) => twoLevelFraction(factors, generators).resolution! >= 4);
  return (clear ?? known[0]!).points;
}

function fractional(factors: readonly Factor[], count: number): Design {
  const usual = usualFractions(factors.length).find(({ points }) => points === count);
  const fraction = twoLevelFraction(factors.length, usual?.generators ?? []);
  const points = fraction.points.map((row) => row.map((sign, i) => factors[i]!.levels[sign < 0 ? 0 : 1]!));
  return { kind: 'fraction', points, coordinates: fraction.points, fraction, perPath: points.length };
}

/** Values that a factor really takes, for whole numbers lie off the places that were drawn. */
const taken = (factors: readonly Factor[], points: readonly Point[]) =>
  points.map((row) => row.map((level, i) => shareOf(factors[i]!, level)));

function spread(factors: readonly Factor[], count: number): Design {
  const cube = latinHypercube(count, factors.length, drawn('latin'));
  const points = cube.map((row) => row.map((share, i) => levelWithin(factors[i]!, share)));
  return {
    ...{ kind: 'latin', points, coordinates: taken(factors, points) },
    ...{ fraction: null, perPath: points.length },
  };
}

/** Each whole number has as much of the way as any other, the ends included. */
function levelWithin(factor: Factor, share: number): Level {
  const { range } = factor;
  if (range === null || !range.whole) return levelAt(factor, share);
  const n = range.to - range.from;
  return levelAt(factor, Math.min(n, Math.floor(share * (n + 1))) / n);
}

function screening(factors: readonly Factor[], paths: number): Design {
  const ways = trajectories(factors.length, paths, GRID, drawn('screen'));
  const points = ways.flatMap((way) =>
    way.points.map((row) => row.map((share, i) => levelAt(factors[i]!, share))),
  );
  return {
    ...{ kind: 'screen', points, coordinates: taken(factors, points) },
    ...{ fraction: null, perPath: factors.length + 1 },
  };
}

/** The first factor of a Latin hypercube that its points do not tell from those before it; -1 where there is none, and elsewhere. */
export const boundIn = ({ kind, coordinates }: Design): number =>
  kind === 'latin' ? boundFactor(coordinates) : -1;

/** The paths of screening by the values that were really taken. */
export function pathsOf({ coordinates, perPath }: Design): Trajectory[] {
  return Array.from({ length: coordinates.length / perPath }, (_, path) => {
    const points = coordinates.slice(path * perPath, (path + 1) * perPath);
    const order = points.slice(1).map((row, i) => row.findIndex((x, factor) => x !== points[i]![factor]));
    return { points, order };
  });
}

/**
 * The settings of a design.
 * @param count of points for a fraction or a Latin hypercube, of paths for screening; nothing for all combinations
 */
export function designOf(kind: DesignKind, factors: readonly Factor[], count: number): Design {
  switch (kind) {
    case 'all':
      return combined(factors);
    case 'fraction':
      return fractional(factors, count);
    case 'latin':
      return spread(factors, count);
    case 'screen':
      return screening(factors, count);
  }
}
