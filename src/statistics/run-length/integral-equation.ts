/** Points and weights of a quadrature. */
interface Quadrature {
  readonly points: readonly number[];
  readonly weights: readonly number[];
}

/**
 * Gauss-Legendre quadrature of `n` points between `from` and `to`: the zeros of the Legendre polynomial by Newton's
 * method. Source: any text on numerical analysis, e.g. M. Abramowitz and I. A. Stegun (1964), 25.4.29.
 */
export function gaussLegendre(n: number, from: number, to: number): Quadrature {
  const points: number[] = [];
  const weights: number[] = [];
  const half = (to - from) / 2;
  for (let i = 1; i <= n; i++) {
    let x = Math.cos((Math.PI * (i - 0.25)) / (n + 0.5));
    let slope = 0;
    // Newton's method doubles the digits at every step, from two at the start.
    for (let step = 0; step < 6; step++) {
      let before = 1;
      let value = x;
      for (let k = 2; k <= n; k++)
        [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
      slope = (n * (x * value - before)) / (x * x - 1);
      x -= value / slope;
    }
    points.push((from + to) / 2 - half * x);
    weights.push((2 * half) / ((1 - x * x) * slope * slope));
  }
  return { points, weights };
}

/**
 * Solves L = 1 + P L for a matrix of chances that leave something over in each row, so that elimination needs no
 * pivots. Destroys `p`.
 */
export function meanStepsToLeave(p: number[][]): number[] {
  const n = p.length;
  const rows = p.map((row, i) => [...row.map((chance, j) => (i === j ? 1 : 0) - chance), 1]);
  for (let k = 0; k < n; k++) {
    const pivot = rows[k]!;
    for (let i = k + 1; i < n; i++) {
      const row = rows[i]!;
      const times = row[k]! / pivot[k]!;
      if (times === 0) continue;
      for (let j = k; j <= n; j++) row[j]! -= times * pivot[j]!;
    }
  }
  const found = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    const row = rows[k]!;
    let left = row[n]!;
    for (let j = k + 1; j < n; j++) left -= row[j]! * found[j]!;
    found[k] = left / row[k]!;
  }
  return found;
}

/** More points than this take seconds. */
const MOST_POINTS = 800;

/** Points of a quadrature that resolve a kernel as wide as a normal density, over so many of its sigmas; null for too many. */
export function pointsFor(sigmas: number): number | null {
  const points = Math.ceil(24 + 4 * sigmas);
  return points <= MOST_POINTS ? points : null;
}
