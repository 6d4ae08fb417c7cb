import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { Estimate } from '../estimate.ts';
import { studentQuantile } from '../mean-interval.ts';
import { type Better, signOf } from './better.ts';

/** One system beside the best of the others. */
export interface BesideBest {
  /** Its mean less that of the best other one. An end is 0 where the interval says on which side of the best it is. */
  readonly difference: Estimate;
  /** Whether the runs leave it open that it is the best. */
  readonly mayBeBest: boolean;
  /** Whether all others are shown to be no better. */
  readonly best: boolean;
}

/**
 * Multiple comparisons with the best: intervals that hold together at `level` for the mean of each system less the best of the
 * others, constrained to hold zero. J. C. Hsu (1984), Constrained simultaneous confidence intervals for multiple
 * comparisons with the best, Ann. Stat. 12, 1136-1144.
 *
 * All intervals follow from one statement about the best system, unknown though it is: that it leads no other by more than the
 * upper end of their difference. These are k - 1 one-sided statements, held together by Bonferroni's inequality, each by the
 * t of paired differences with a variance of its own. So they hold under common random numbers however the systems
 * depend on each other, as long as the differences are near normal; B. L. Nelson (1993), Robust multiple comparisons
 * under common random numbers, ACM TOMACS 3, 225-243, is sharper where all differences vary alike, which is not assumed here.
 * @param values by system, two or more, and run; the runs of all systems go by the same seeds in the same order
 * @throws RangeError for fewer than two systems or unequal numbers of runs
 */
export function besideBest(
  values: readonly (readonly number[])[],
  level: number,
  better: Better,
): BesideBest[] {
  const k = values.length;
  const runs = values[0]?.length ?? 0;
  if (k < 2 || runs === 0 || values.some((own) => own.length !== runs))
    throw new RangeError('the best is found among two or more systems with equally many runs');
  const sign = signOf(better);
  const others = (i: number) => values.map((_, j) => j).filter((j) => j !== i);
  const paired = (i: number, j: number) => values[i]!.map((x, run) => sign * (x - values[j]![run]!));
  const lead = values.map((_, i) => values.map((_, j) => (i === j ? 0 : mean(paired(i, j)))));
  // Added to 0 so that none is written -0.
  const value = (i: number) => 0 + sign * Math.min(...others(i).map((j) => lead[i]![j]!));
  if (runs === 1)
    return values.map((_, i) => ({
      difference: { value: value(i), lower: null, upper: null, level, runs, method: 'one run, no interval' },
      mayBeBest: true,
      best: false,
    }));
  const t = studentQuantile(1 - (1 - level) / (k - 1), runs - 1) / Math.sqrt(runs);
  const half = values.map((_, i) =>
    values.map((_, j) => (i === j ? 0 : t * sampleStandardDeviation(paired(i, j)))),
  );
  const upper = values.map((_, i) =>
    Math.max(0, Math.min(...others(i).map((j) => lead[i]![j]! + half[i]![j]!))),
  );
  // Systems that tie without any spread may both be best, although neither leads.
  const mayBeBest = values.map((_, i) => others(i).every((j) => lead[i]![j]! + half[i]![j]! >= 0));
  return values.map((_, i) => {
    const rivals = others(i).filter((j) => mayBeBest[j]);
    const lower = Math.min(0, ...rivals.map((j) => lead[i]![j]! - half[i]![j]!));
    const ends = sign > 0 ? { lower, upper: upper[i]! } : { lower: 0 - upper[i]!, upper: 0 - lower };
    return {
      difference: { value: value(i), ...ends, level, runs, method: `Hsu, paired t, Bonferroni for ${k - 1}` },
      mayBeBest: mayBeBest[i]!,
      best: rivals.length === 0,
    };
  });
}
