import { exp, ln } from './elementary.ts';

/** From here on the series below leaves out less than 1e-18. */
const FAR = 16;
const HALF_LN_2_PI = 0.9189385332046728;

/**
 * The gamma function of a number above zero, to about 1e-14 relative, by arithmetic alone.
 * Source: M. Abramowitz and I. A. Stegun (1964), Handbook of Mathematical Functions, 6.1.15 and 6.1.41 (Stirling's series).
 */
export function gammaFunction(x: number): number {
  let z = x;
  let passed = 1;
  for (; z < FAR; z++) passed *= z;
  const q = 1 / (z * z);
  const series =
    (1 / 12 - q * (1 / 360 - q * (1 / 1260 - q * (1 / 1680 - q * (1 / 1188 - (q * 691) / 360_360))))) / z;
  return exp((z - 0.5) * ln(z) - z + HALF_LN_2_PI + series) / passed;
}
