import type { CusumSpec } from '../charts/cusum.ts';
import { normalDensity, normalShare } from '../normal.ts';
import { gaussLegendre, meanStepsToLeave, pointsFor } from './integral-equation.ts';

/** The mean number of points to a signal from a sum of zero and from a sum of `start`. */
interface OneSided {
  readonly fromZero: number;
  readonly fromStart: number;
}

/**
 * Page's integral equation for the sum upwards, at the points of a quadrature.
 * Source: E. S. Page (1954), Biometrika 41, 100-115.
 */
function oneSided(slack: number, limit: number, start: number, shift: number): OneSided {
  const order = pointsFor(limit);
  if (order === null) return { fromZero: Number.NaN, fromStart: Number.NaN };
  const { points, weights } = gaussLegendre(order, 0, limit);
  const step = (from: number) => [
    normalShare(slack - shift - from),
    ...points.map((to, j) => weights[j]! * normalDensity(to + slack - shift - from)),
  ];
  // The first state is a sum of zero, which has a chance of its own.
  const lengths = meanStepsToLeave([step(0), ...points.map(step)]);
  const from = (sum: number) => 1 + step(sum).reduce((all, chance, j) => all + chance * lengths[j]!, 0);
  return { fromZero: lengths[0]!, fromStart: from(start) };
}

/**
 * The mean number of points to a signal of a CUSUM chart of independent normal points whose mean is off by `shift`
 * sigmas; NaN for a limit too wide to work out. Both sides together by J. M. Lucas and R. B. Crosier (1982), Technometrics 24, 199-205; without a head
 * start that is 1/L = 1/L(up) + 1/L(down).
 */
export function cusumRunLength({ slack, limit, headStart, side }: CusumSpec, shift: number): number {
  const start = headStart * limit;
  const up = () => oneSided(slack, limit, start, shift);
  const down = () => oneSided(slack, limit, start, -shift);
  if (side === 'up') return up().fromStart;
  if (side === 'down') return down().fromStart;
  const [u, d] = [up(), down()];
  const both = u.fromStart * d.fromZero + d.fromStart * u.fromZero - u.fromZero * d.fromZero;
  return both / (u.fromZero + d.fromZero);
}
