import jstat from 'jstat';
import { mean } from 'simple-statistics';
import type { Estimate } from '../estimate.ts';
import { meanInterval } from '../mean-interval.ts';

/** The plane that goes best through what came out at points. */
interface LinearEffects {
  /** By factor, what it does from coordinate 0 to 1, in the unit of the measure. */
  readonly effects: readonly Estimate[];
  /** The share of the variation between the means of points that the plane accounts for; null where there is none. */
  readonly explained: number | null;
}

const dot = (one: readonly number[], other: readonly number[]): number =>
  one.reduce((sum, x, i) => sum + x * other[i]!, 0);

/** Of its own variation, squared, a coordinate keeps more than this where the others do not account for it. */
const OWN = 1e-9;

/**
 * The first factor whose coordinates those before it account for, so that no plane tells them apart; -1 where each has something of
 * its own. By the modified Gram-Schmidt process; G. H. Golub and C. F. Van Loan, Matrix Computations, chapter 5.
 */
export function boundFactor(points: readonly (readonly number[])[]): number {
  const known: number[][] = [];
  const factors = points[0]?.length ?? 0;
  for (let factor = 0; factor < factors; factor++) {
    const middle = mean(points.map((row) => row[factor]!));
    const whole = points.map((row) => row[factor]! - middle);
    const own = known.reduce((rest, unit) => {
      const along = dot(rest, unit);
      return rest.map((x, i) => x - along * unit[i]!);
    }, whole);
    const left = dot(own, own);
    if (left <= OWN * dot(whole, whole)) return factor;
    known.push(own.map((x) => x / Math.sqrt(left)));
  }
  return -1;
}

/** By coefficient, the mean first, what each point's value counts for by least squares. */
function weightsOf(points: readonly (readonly number[])[]): number[][] {
  // About the middle, so that the equations are well-conditioned.
  const middle = points[0]!.map((_, factor) => mean(points.map((row) => row[factor]!)));
  const rows = points.map((row) => [1, ...row.map((x, factor) => x - middle[factor]!)]);
  const columns = rows[0]!.map((_, i) => rows.map((row) => row[i]!));
  const inverse = jstat.jStat.inv(columns.map((one) => columns.map((other) => dot(one, other))));
  return inverse.map((own) => rows.map((row) => dot(own, row)));
}

/**
 * Linear effects by least squares. Each seed gives one plane, so that the interval of an effect is the t interval over seeds, which
 * heeds that all points went by the same seeds; it holds for the plane through the true means at these points, bent or not.
 * D. C. Montgomery, Design and Analysis of Experiments, the chapter on fitting regression models.
 * @param points by point and factor, coordinates
 * @param values by point and seed, the seeds in the same order at all points
 * @param comparisons how many intervals are to hold together
 * @throws RangeError where there are too few points, they do not tell the factors apart, or values are missing
 */
export function linearEffects(
  points: readonly (readonly number[])[],
  values: readonly (readonly number[])[],
  level: number,
  comparisons = 1,
): LinearEffects {
  const factors = points[0]?.length ?? 0;
  const seeds = values[0]?.length ?? 0;
  if (seeds === 0 || values.length !== points.length || values.some((own) => own.length !== seeds))
    throw new RangeError('effects need values of every point under every seed');
  if (points.length < factors + 2)
    throw new RangeError(
      `${points.length} points; linear effects of ${factors} factors take ${factors + 2} or more`,
    );
  const bound = boundFactor(points);
  if (bound >= 0) throw new RangeError(`the points do not tell factor ${bound} from those before it`);
  const [, ...weights] = weightsOf(points);
  const effects = weights.map((own) =>
    meanInterval(
      Array.from({ length: seeds }, (_, seed) =>
        dot(
          own,
          values.map((at) => at[seed]!),
        ),
      ),
      level,
      comparisons,
    ),
  );
  const means = values.map((own) => mean([...own]));
  const overall = mean(means);
  const total = means.reduce((sum, value) => sum + (value - overall) ** 2, 0);
  const fitted = points.map((row) => dot(row, effects.map(({ value }) => value))); // biome-ignore format: one line reads better
  const at = mean(fitted);
  const plane = fitted.reduce((sum, value) => sum + (value - at) ** 2, 0);
  return { effects, explained: total > 0 ? Math.min(1, plane / total) : null };
}
