import { normalShare } from '../normal.ts';
import { checkSelection, pointsOf, reached } from './constant.ts';

/**
 * Rinott's constant h of selection in two stages: the mean over y of (the mean over x of Phi(h / sqrt(f (1/x + 1/y))))^(k - 1)
 * is the probability of a right choice, x and y chi-square with f = firstStage - 1 degrees of freedom. Y. Rinott (1978), On
 * two-stage selection procedures and related probability-inequalities, Comm. Stat. A 7, 799-811.
 * @param systems 2 or more
 * @param firstStage runs of each system in the first stage, 2 or more
 * @param confidence above 1/systems, below 1
 */
export function rinottConstant(systems: number, firstStage: number, confidence: number): number {
  checkSelection(systems, firstStage, confidence);
  const f = firstStage - 1;
  // Chi-square on the scale of its logarithm, whose density dies out at both ends and peaks at log f.
  const points = pointsOf(
    (t) => (f * t - Math.exp(t)) / 2,
    Math.log(f),
    Math.sqrt(2 / f) / 4,
    (t) => 1 / Math.exp(t),
  );
  const right = (h: number) =>
    points.reduce((sum, y) => {
      const beats = points.reduce(
        (own, x) => own + x.weight * normalShare(h / Math.sqrt(f * (x.x + y.x))),
        0,
      );
      return sum + y.weight * beats ** (systems - 1);
    }, 0);
  return reached(right, confidence);
}

/**
 * How many runs a system needs in all when the sample variance of its first stage is `variance`. With Rinott's constant the
 * system with the best mean over all its runs is then the best one with the stated probability, if it leads by `worth` or
 * more. This holds for systems that are independent of each other, so not for runs under common random numbers, for which
 * there are `KimNelson` and `pairedTotal`.
 */
export function rinottTotal(constant: number, firstStage: number, variance: number, worth: number): number {
  return Math.max(firstStage, Math.ceil((constant ** 2 * variance) / worth ** 2));
}
