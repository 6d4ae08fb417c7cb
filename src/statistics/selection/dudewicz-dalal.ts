import jstat from 'jstat';
import { checkSelection, pointsOf, reached } from './constant.ts';

/**
 * The constant h1 of selection in two stages by weighted means: the integral of F(z + h)^(k - 1) f(z), Student's t with
 * firstStage - 1 degrees of freedom, is the probability of a right choice. E. J. Dudewicz and S. R. Dalal (1975), Allocation of
 * observations in ranking and selection with unequal variances, Sankhya B 37, 28-78. For two systems it is Rinott's.
 */
export function dudewiczDalalConstant(systems: number, firstStage: number, confidence: number): number {
  checkSelection(systems, firstStage, confidence);
  const f = firstStage - 1;
  // On the scale of z = sinh(t), on which heavy tails die out fast enough.
  const points = pointsOf(
    (t) => Math.log(Math.cosh(t)) - ((f + 1) / 2) * Math.log1p(Math.sinh(t) ** 2 / f),
    0,
    0.1,
    Math.sinh,
  );
  const { cdf } = jstat.jStat.studentt;
  return reached(
    (h) => points.reduce((sum, { x, weight }) => sum + weight * cdf(x + h, f) ** (systems - 1), 0),
    confidence,
  );
}
