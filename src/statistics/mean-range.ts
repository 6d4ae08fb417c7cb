import { normalShare } from './normal.ts';

/** Beyond so many sigmas no sample's range is worth counting. */
const FAR = 9;
const STEPS = 2000;

/**
 * The mean range of `n` normal values (2 or more) in their sigmas, the constant d2 of control charts: the integral of
 * 1 - F^n - (1 - F)^n. Source: L. H. C. Tippett (1925), Biometrika 17, 364-387.
 */
export function meanRange(n: number): number {
  const step = (2 * FAR) / STEPS;
  let sum = 0;
  // The trapezoidal rule is exact to rounding where all that is integrated dies out at both ends.
  for (let i = 0; i <= STEPS; i++) {
    const below = normalShare(-FAR + i * step);
    sum += 1 - below ** n - (1 - below) ** n;
  }
  return sum * step;
}
