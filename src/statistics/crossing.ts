import { mean, sampleCovariance } from 'simple-statistics';
import { studentQuantile } from './mean-interval.ts';

/** Where one thing stops being ahead of another. */
export interface Crossing {
  readonly value: number;
  /** Ends of the interval; null where it is open, or where one run gives none. */
  readonly lower: number | null;
  readonly upper: number | null;
}

/** Paired differences at one level, run by run. */
interface AtLevel {
  readonly level: number;
  readonly differences: readonly number[];
}

/** Two levels next to each other: on the way from one to the other every run's difference is linear. */
interface Between {
  readonly from: AtLevel;
  readonly to: AtLevel;
}

const covariance = (one: readonly number[], other: readonly number[]) =>
  sampleCovariance([...one], [...other]);

/** Shares of the way at which the mean is so many standard errors from zero: where a parabola is zero. */
function edges({ from, to }: Between, most: number): number[] {
  const runs = from.differences.length;
  const [m, n] = [mean([...from.differences]), mean([...to.differences])];
  const error = (most * most) / runs;
  const v = error * covariance(from.differences, from.differences);
  const w = error * covariance(to.differences, to.differences);
  const c = error * covariance(from.differences, to.differences);
  const a = (n - m) ** 2 - (v - 2 * c + w);
  const b = m * (n - m) - (c - v);
  // Where there is none, the lowest point comes instead: an edge too many does no harm.
  const root = Math.sqrt(Math.max(0, b * b - a * (m * m - v)));
  const found = a === 0 ? [(m * m - v) / (-2 * b)] : [(-b - root) / a, (-b + root) / a];
  return found.filter((share) => share >= 0 && share <= 1);
}

/** Student's t of the mean at a share of the way; infinite where the runs do not differ. */
function studentAt({ from, to }: Between, share: number): number {
  const at = from.differences.map((one, i) => (1 - share) * one + share * to.differences[i]!);
  const error = Math.sqrt(covariance(at, at) / at.length);
  const value = mean(at);
  return value === 0 ? 0 : value / error;
}

/**
 * The interval of the level at which a mean paired difference comes from above zero to below it, by Fieller's
 * theorem: it holds the levels at which a t test does not tell the mean difference from zero, about the crossing.
 * Between two levels every run's difference is taken as linear. So the interval is exact for normal differences that
 * are, whatever the number of runs; where no level tried on a side tells the difference from zero, it is open there.
 * Source: E. C. Fieller (1954), Some problems in interval estimation, Journal of the Royal Statistical Society B 16,
 * 175-185.
 * @param levels in rising order, the same runs at each
 * @param value where the mean difference crosses zero, within the levels
 */
export function crossingInterval(levels: readonly AtLevel[], value: number, coverage: number): Crossing {
  const runs = levels[0]!.differences.length;
  if (runs < 2) return { value, lower: null, upper: null };
  const most = studentQuantile((1 + coverage) / 2, runs - 1);
  const ways = levels.slice(1).map((to, i): Between => ({ from: levels[i]!, to }));
  const levelAt = ({ from, to }: Between, share: number) => from.level + share * (to.level - from.level);
  // Between two edges next to each other the answer of the test does not change.
  const pieces = ways.flatMap((way) => {
    const ends = [0, ...edges(way, most).sort((a, b) => a - b), 1];
    return ends.slice(1).map((end, i) => ({
      from: levelAt(way, ends[i]!),
      to: levelAt(way, end),
      student: studentAt(way, (ends[i]! + end) / 2),
    }));
  });
  const ahead = pieces.filter(({ from, student }) => student > most && from < value);
  const behind = pieces.filter(({ to, student }) => student < -most && to > value);
  return {
    value,
    lower: ahead.length > 0 ? Math.min(value, Math.max(...ahead.map(({ to }) => to))) : null,
    upper: behind.length > 0 ? Math.max(value, Math.min(...behind.map(({ from }) => from))) : null,
  };
}
