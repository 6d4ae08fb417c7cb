import { normalPoint, normalShare, shareBetween } from './normal.ts';

/** Limits of one variable; either may be infinite. */
export interface Range {
  readonly lower: number;
  readonly upper: number;
}

/** Points of the lattice. */
const POINTS = 20_011;
const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53];
/** A pivot below this share of the largest variance is rounding: the variable follows from those before it. */
const NOTHING = 1e-12;
/** Keeps the quantile away from the ends of its scale. */
const EDGE = 1e-16;

/** The order that brings the variables least likely to keep their limits first, which evens out the integrand. */
function hardestFirst(
  box: readonly Range[],
  mean: readonly number[],
  covariance: readonly (readonly number[])[],
) {
  const share = box.map(({ lower, upper }, i) =>
    shareBetween(lower, upper, mean[i]!, Math.sqrt(covariance[i]![i]!)),
  );
  return box.map((_, i) => i).sort((one, other) => share[one]! - share[other]!);
}

/** Lower triangle of the Cholesky root of a covariance matrix; a variable that follows from others has a zero pivot. */
function root(covariance: readonly (readonly number[])[]): number[][] {
  const least = NOTHING * Math.max(...covariance.map((row, i) => row[i]!));
  const made = covariance.map(() => covariance.map(() => 0));
  for (const [i, row] of covariance.entries()) {
    for (let j = 0; j <= i; j++) {
      let rest = row[j]!;
      for (let k = 0; k < j; k++) rest -= made[i]![k]! * made[j]![k]!;
      if (i === j) made[i]![i] = rest > least ? Math.sqrt(rest) : 0;
      else made[i]![j] = made[j]![j]! > 0 ? rest / made[j]![j]! : 0;
    }
  }
  return made;
}

/** Between 0 and 1 and back: makes a function over the unit cube periodic without altering its integral. */
const fold = (x: number): number => Math.abs(2 * (x - Math.floor(x)) - 1);

/**
 * The probability that normal variables all keep their limits, to about 1e-5 for up to eight of them; exact for one variable. Separation of
 * variables (A. Genz 1992, Numerical computation of multivariate normal probabilities, J. Comput. Graph. Stat. 1,
 * 141-149) on the lattice of the square roots of the primes (A. Genz and F. Bretz 2009, Computation of Multivariate
 * Normal and t Probabilities, chapter 4); from memory, checked in the tests. The same arguments give the same bits.
 * @param covariance may be singular
 * @param points fewer are quicker and less exact
 * @param begin at which point of the lattice to begin: errors of several boxes with few points each then cancel out in their mean
 * @throws RangeError for more variables than the lattice has directions for
 */
export function boxProbability(
  box: readonly Range[],
  mean: readonly number[],
  covariance: readonly (readonly number[])[],
  points = POINTS,
  begin = 0,
): number {
  const n = box.length;
  if (n === 0) return 1;
  if (n === 1) return shareBetween(box[0]!.lower, box[0]!.upper, mean[0]!, Math.sqrt(covariance[0]![0]!));
  if (n > PRIMES.length + 1)
    throw new RangeError(`${n} variables; a box of at most ${PRIMES.length + 1} is known here`);
  const order = hardestFirst(box, mean, covariance);
  const factor = root(order.map((i) => order.map((j) => covariance[i]![j]!)));
  const lower = order.map((i) => box[i]!.lower - mean[i]!);
  const upper = order.map((i) => box[i]!.upper - mean[i]!);
  const steps = PRIMES.slice(0, n - 1).map((prime) => Math.sqrt(prime) % 1);
  const y = new Float64Array(n);
  let sum = 0;
  let weights = 0;
  for (let point = 1; point <= points; point++) {
    let product = 1;
    for (let i = 0; i < n && product > 0; i++) {
      const row = factor[i]!;
      let known = 0;
      for (let j = 0; j < i; j++) known += row[j]! * y[j]!;
      const pivot = row[i]!;
      if (pivot === 0) {
        product *= shareBetween(lower[i]!, upper[i]!, known, 0);
        y[i] = 0;
        continue;
      }
      const from = normalShare((lower[i]! - known) / pivot);
      const width = normalShare((upper[i]! - known) / pivot) - from;
      product *= width;
      if (i === n - 1) break;
      const p = from + width * fold((begin + point) * steps[i]!);
      y[i] = normalPoint(Math.min(1 - EDGE, Math.max(EDGE, p)));
    }
    // The sequence has no period: points at its ends weigh less, or where it is cut off would show.
    const weight = Math.min(point, points + 1 - point);
    sum += product * weight;
    weights += weight;
  }
  return sum / weights;
}
