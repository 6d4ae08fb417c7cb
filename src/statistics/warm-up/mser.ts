import { mean } from 'simple-statistics';

/** Where MSER cuts a series off. */
export interface Truncation {
  /** Readings to drop at the start. */
  readonly drop: number;
  readonly batches: number;
  /** Mean of the batches that stay. */
  readonly mean: number;
  /** The criterion by the number of batches dropped, from none to half of them. */
  readonly criteria: readonly number[];
  /** Whether the smallest criterion stands at the end of where it is looked for: the series is then too short to tell. */
  readonly late: boolean;
}

/**
 * The start of a series to drop: where the mean of the rest has the smallest standard error, by means of five readings each
 * (MSER-5), among the first half of the batches. Readings left over at the end are not used. K. P. White (1997), An
 * effective truncation heuristic for bias reduction in simulation output, Simulation 69, 323-334; K. P. White, M. J. Cobb
 * and S. C. Spratt (2000), A comparison of five steady-state truncation heuristics for simulation, Proc. Winter
 * Simulation Conf., 755-760. That a cut at the end of the search tells nothing is common practice.
 * @throws RangeError for fewer readings than two batches
 */
export function mser(series: readonly number[], batch = 5): Truncation {
  const m = Math.floor(series.length / batch);
  if (m < 2) throw new RangeError(`${series.length} readings; MSER needs at least ${2 * batch}`);
  const means = Array.from({ length: m }, (_, i) => mean(series.slice(i * batch, (i + 1) * batch)));
  const most = Math.floor(m / 2);
  const criteria = Array.from({ length: most + 1 }, (_, d) => {
    const rest = means.slice(d);
    const middle = mean(rest);
    return rest.reduce((sum, z) => sum + (z - middle) ** 2, 0) / (m - d) ** 2;
  });
  const batches = criteria.indexOf(Math.min(...criteria));
  return {
    drop: batches * batch,
    batches,
    mean: mean(means.slice(batches)),
    criteria,
    late: batches === most,
  };
}
