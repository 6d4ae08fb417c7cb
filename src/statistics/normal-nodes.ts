import { normalDensity, normalPoint } from './normal.ts';

/** A point that stands for so much of a law of independent standard normal variables. */
export interface Node {
  readonly share: number;
  readonly z: readonly number[];
}

/** Half width and number of the points along one variable, by how many variables there are. */
const GRIDS = [
  { reach: 6, points: 201 },
  { reach: 6, points: 41 },
  { reach: 6, points: 25 },
];
/** Points for more variables than grids are for, and the primes whose square roots spread them. */
const SPREAD = 16_384;
const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37];

function along({ reach, points }: { reach: number; points: number }): { share: number; z: number }[] {
  const step = (2 * reach) / (points - 1);
  const at = Array.from({ length: points }, (_, i) => i * step - reach);
  const sum = at.reduce((total, z) => total + normalDensity(z), 0);
  return at.map((z) => ({ share: normalDensity(z) / sum, z }));
}

/**
 * Points that stand for independent standard normal variables; shares add up to 1. Up to three variables: the trapezoidal
 * rule, whose moments of low order are right to about 1e-5 (L. N. Trefethen and J. A. C. Weideman (2014), The exponentially
 * convergent trapezoidal rule, SIAM Review 56, 385-458). More: points of equal shares, spread by the square roots of primes.
 * @throws RangeError for more variables than there are directions for
 */
export function normalNodes(variables: number): Node[] {
  if (variables > PRIMES.length)
    throw new RangeError(`${variables} variables; at most ${PRIMES.length} here`);
  const grid = GRIDS[variables - 1];
  if (variables > 0 && !grid)
    return Array.from({ length: SPREAD }, (_, k) => ({
      share: 1 / SPREAD,
      z: PRIMES.slice(0, variables).map((prime) => normalPoint(((k + 0.5) * Math.sqrt(prime)) % 1)),
    }));
  let nodes: Node[] = [{ share: 1, z: [] }];
  for (let i = 0; i < variables; i++) {
    const axis = along(grid!);
    nodes = nodes.flatMap((node) =>
      axis.map(({ share, z }) => ({ share: node.share * share, z: [...node.z, z] })),
    );
  }
  return nodes;
}
