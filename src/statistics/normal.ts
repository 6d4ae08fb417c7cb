import jstat from 'jstat';

const { normal } = jstat.jStat;

/** The share of a standard normal law at or below `z`, to about 1e-16 absolute; `z` may be infinite. */
export function normalShare(z: number): number {
  if (z === Number.POSITIVE_INFINITY) return 1;
  if (z === Number.NEGATIVE_INFINITY) return 0;
  return normal.cdf(z, 0, 1);
}

/** The z at or below which a share `p` of a standard normal law lies, 0 < p < 1, to about 1e-11 relative. */
export const normalPoint = (p: number): number => normal.inv(p, 0, 1);

/**
 * The share of a normal law between two values, the lower one first; either may be infinite. A law without spread
 * lies within or it does not, its limits included.
 */
export function shareBetween(lower: number, upper: number, mean: number, sd: number): number {
  if (sd === 0) return lower <= mean && mean <= upper ? 1 : 0;
  const [a, b] = [(lower - mean) / sd, (upper - mean) / sd];
  // Of two values above the middle, what lies above them is the smaller number and keeps more digits.
  return a > 0 ? normalShare(-a) - normalShare(-b) : normalShare(b) - normalShare(a);
}

/** The share of a normal law below a value; one without spread that lies just there does not lie below it. */
export const shareBelow = (limit: number, mean: number, sd: number): number =>
  sd === 0 ? Number(mean < limit) : normalShare((limit - mean) / sd);

/** The density of the standard normal law at `x`. */
export const normalDensity = (x: number): number => normal.pdf(x, 0, 1);
