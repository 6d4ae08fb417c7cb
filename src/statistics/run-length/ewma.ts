import { type EwmaSpec, ewmaSigma } from '../charts/ewma.ts';
import { normalDensity } from '../normal.ts';
import { gaussLegendre, meanStepsToLeave, pointsFor } from './integral-equation.ts';

/**
 * The mean number of points to a signal of an EWMA chart with limits on both sides, from its centre, of independent
 * normal points whose mean is off by `shift` sigmas; NaN for a weight too small to work out.
 * Source: S. V. Crowder (1987), Technometrics 29, 401-407 (its integral equation).
 */
export function ewmaRunLength({ weight, limit }: EwmaSpec, shift: number): number {
  const most = limit * ewmaSigma(weight);
  const order = pointsFor((2 * most) / weight);
  if (order === null) return Number.NaN;
  const { points, weights } = gaussLegendre(order, -most, most);
  const step = (from: number) =>
    points.map(
      (to, j) => (weights[j]! / weight) * normalDensity((to - (1 - weight) * from) / weight - shift),
    );
  const lengths = meanStepsToLeave(points.map(step));
  return 1 + step(0).reduce((all, chance, j) => all + chance * lengths[j]!, 0);
}
