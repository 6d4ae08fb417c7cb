import { normalDensity } from './normal.ts';

/** Beyond so many standard deviations a normal law holds less than 1e-16. */
const FAR = 8.5;
/** Gauss-Legendre rule of five points on (-1, 1): M. Abramowitz and I. Stegun, table 25.4. */
const NODES = [0, 0.538469310105683, -0.538469310105683, 0.906179845938664, -0.906179845938664];
const WEIGHTS = [
  0.568888888888889, 0.478628670499366, 0.478628670499366, 0.236926885056189, 0.236926885056189,
];

/**
 * The mean of `value` over a standard normal variable.
 * @param kinks points where it is not smooth
 * @param step widest step of the quadrature, in standard deviations
 */
export function normalMean(value: (z: number) => number, kinks: readonly number[], step: number): number {
  const ends = [-FAR, ...kinks.filter((kink) => Math.abs(kink) < FAR).sort((a, b) => a - b), FAR];
  let sum = 0;
  for (let i = 1; i < ends.length; i++) {
    const [from, to] = [ends[i - 1]!, ends[i]!];
    const panels = Math.max(1, Math.ceil((to - from) / step));
    const half = (to - from) / panels / 2;
    for (let panel = 0; panel < panels; panel++) {
      const middle = from + (2 * panel + 1) * half;
      for (const [k, node] of NODES.entries()) {
        const z = middle + half * node;
        sum += WEIGHTS[k]! * half * normalDensity(z) * value(z);
      }
    }
  }
  return sum;
}
