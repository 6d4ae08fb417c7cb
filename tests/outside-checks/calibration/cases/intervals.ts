import { crossingInterval } from '../../../../src/statistics/crossing.ts';
import type { Estimate } from '../../../../src/statistics/estimate.ts';
import { fixedWidthInterval, fixedWidthTotal } from '../../../../src/statistics/fixed-width.ts';
import { jackknifeRatio } from '../../../../src/statistics/jackknife-ratio.ts';
import { meanInterval } from '../../../../src/statistics/mean-interval.ts';
import { exactProportion, wilsonProportion } from '../../../../src/statistics/proportion-interval.ts';
import { quantileInterval, rankPair } from '../../../../src/statistics/quantile-interval.ts';
import { ratioOfMeans } from '../../../../src/statistics/ratio-interval.ts';
import { shareInterval } from '../../../../src/statistics/share-interval.ts';
import { spreadInterval } from '../../../../src/statistics/spread-interval.ts';
import { welchInterval } from '../../../../src/statistics/welch-interval.ts';
import { type Calibration, drawn, holds, LEVEL, type Luck, times } from '../calibration.ts';
import { coverage, type Proportion } from '../coverage.ts';

const STUDENT = 'Student (1908): exact for normal values';

const means: readonly Calibration[] = [
  drawn({
    ...{ id: 'mean, normal', what: 't interval of the mean of 10 normal values', source: STUDENT },
    ...{ exact: '10', claim: 'covers', theory: LEVEL },
    experiment: ({ normal }) =>
      holds(
        meanInterval(
          times(10, () => 10 + 3 * normal()),
          LEVEL,
        ),
        10,
      ),
  }),
  drawn({
    id: 'mean, skewed',
    what: 't interval of the mean of 120 exponential values, whose skewness of 2 asks for 101',
    source: 'W. G. Cochran, Sampling Techniques, section 2.15 (from memory)',
    ...{ exact: '1', claim: 'covers' },
    experiment: ({ exponential }) => holds(meanInterval(times(120, exponential), LEVEL), 1),
  }),
  drawn({
    id: 'difference, paired',
    what: 't interval of the mean of 8 paired differences, much luck in common, unequal spreads',
    source: STUDENT,
    ...{ exact: '1', claim: 'covers', theory: LEVEL },
    experiment: ({ normal }) => {
      const differences = times(8, () => {
        const shared = 4 * normal();
        return 5 + shared + normal() - (4 + shared + 2 * normal());
      });
      return holds(meanInterval(differences, LEVEL), 1);
    },
  }),
  drawn({
    id: 'difference, independent',
    what: 'interval of a difference of two means, 10 values of spread 1 and 20 of spread 4',
    source: 'B. L. Welch (1938), Biometrika 29, 350-362',
    ...{ exact: '2', claim: 'covers' },
    experiment: ({ normal }) =>
      holds(
        welchInterval(
          times(10, () => 5 + normal()),
          times(20, () => 3 + 4 * normal()),
          LEVEL,
        ),
        2,
      ),
  }),
  drawn({
    id: 'mean, fixed width',
    what: 'interval of +- 1 about the mean of normal values of spread 3, as many runs as the first 10 ask for',
    source: 'C. Stein (1945), Ann. Math. Stat. 16, 243-258: exact but for whole runs',
    ...{ exact: '10', claim: 'covers' },
    experiment: ({ normal }) => {
      const draw = () => 10 + 3 * normal();
      const values = times(10, draw);
      const total = fixedWidthTotal(values, 1, LEVEL);
      while (values.length < total) values.push(draw());
      return holds(fixedWidthInterval(values, total, 1, LEVEL), 10);
    },
  }),
];

const TRIALS = 50;
const SHARE = 0.2;

const proportion = (
  id: string,
  interval: Proportion,
  claim: 'covers' | 'at least',
  source: string,
): Calibration =>
  drawn({
    ...{ id, what: `interval of a proportion of ${TRIALS} runs`, source, exact: `${SHARE}`, claim },
    theory: coverage(interval, TRIALS, SHARE),
    experiment: ({ even }) => {
      const hits = times(TRIALS, even).filter((u) => u < SHARE).length;
      return holds(interval(hits, TRIALS, LEVEL), SHARE);
    },
  });

const shares: readonly Calibration[] = [
  proportion(
    'proportion, Wilson',
    wilsonProportion,
    'covers',
    'E. B. Wilson (1927), J. Am. Stat. Assoc. 22, 209-212; coverage by the binomial law',
  ),
  proportion(
    'proportion, exact',
    exactProportion,
    'at least',
    'C. J. Clopper and E. S. Pearson (1934), Biometrika 26, 404-413: never below its level, mostly above',
  ),
  drawn({
    id: 'share, over runs',
    what: 'interval of a share over 20 runs of 50 trials each, runs with shares of their own between 0.2 and 0.4',
    source: "t over the runs, widened to Clopper and Pearson's",
    ...{ exact: '0.3', claim: 'at least' },
    experiment: ({ even }) => {
      const runs = times(20, () => {
        const own = 0.2 + 0.2 * even();
        return { hits: times(50, even).filter((u) => u < own).length, of: 50 };
      });
      return holds(shareInterval(runs, LEVEL), 0.3);
    },
  }),
];

const ORDER = 'H. A. David and H. N. Nagaraja, Order Statistics, section 7.1: coverage by the binomial law';

const quantile = (n: number, p: number): Calibration =>
  drawn({
    id: `quantile, ${p} of ${n}`,
    what: `interval by order statistics of the quantile ${p} of an exponential law, ${n} runs`,
    ...{ source: ORDER, exact: String(Number((-Math.log1p(-p)).toPrecision(6))), claim: 'covers' },
    theory: rankPair(n, p, LEVEL)!.coverage,
    experiment: ({ exponential }) =>
      holds(quantileInterval(times(n, exponential), p, LEVEL), -Math.log1p(-p)),
  });

type Pairs = readonly (readonly [number, number])[];

/** Values over values that share luck with them, means 30 and 10. */
const pairsOf = (runs: number, { normal }: Luck): Pairs =>
  times(runs, () => {
    const shared = normal();
    return [30 + 3 * shared + normal(), 10 + shared + 0.5 * normal()] as const;
  });

const ratio = (
  id: string,
  what: string,
  runs: number,
  source: string,
  interval: (above: readonly number[], below: readonly number[]) => Estimate | null,
  theory?: number,
): Calibration =>
  drawn({
    ...{ id, what: `${what} of a ratio of means, ${runs} runs`, source, exact: '3', claim: 'covers' },
    ...(theory !== undefined && { theory }),
    experiment: (luck) => {
      const pairs = pairsOf(runs, luck);
      return holds(
        interval(
          pairs.map(([above]) => above),
          pairs.map(([, below]) => below),
        ),
        3,
      );
    },
  });

const ratios: readonly Calibration[] = [
  ratio(
    'ratio, jackknife',
    'jackknife interval',
    30,
    'R. G. Miller (1974), Biometrika 61, 1-15: for many runs',
    (above, below) => jackknifeRatio(above, below, LEVEL),
  ),
  ratio(
    'ratio, Fieller',
    "Fieller's interval",
    10,
    'E. C. Fieller (1954), J. R. Stat. Soc. B 16, 175-185: exact for normal values',
    (above, below) => ratioOfMeans(above, below, LEVEL),
    LEVEL,
  ),
  drawn({
    id: 'crossing',
    what: 'interval of the level at which a mean paired difference changes sign, 10 runs at levels 0, 0.5 and 1',
    source: 'E. C. Fieller (1954), J. R. Stat. Soc. B 16, 175-185: exact where the difference is linear',
    ...{ exact: '0.6', claim: 'covers' },
    experiment: ({ normal }) => {
      // Mean differences 6, 1 and -4, and luck of each run at either end.
      const runs = times(10, () => [6 + 2 * normal(), -4 + 2 * normal()] as const);
      const levels = [0, 0.5, 1].map((level) => ({
        level,
        differences: runs.map(([from, to]) => (1 - level) * from + level * to),
      }));
      const [from, to] = [0, 2].map((i) => levels[i]!.differences.reduce((sum, x) => sum + x, 0));
      return holds(crossingInterval(levels, from! / (from! - to!), LEVEL), 0.6);
    },
  }),
];

/** Mean and mean square deviation from it. */
function momentsOf(values: readonly number[]) {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  return { mean, variance: values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (values.length - 1) };
}

const spread = drawn({
  id: 'spread, over runs',
  what: 'interval of a standard deviation over 40 runs of 50 values each, spread 0.5 between runs and 1 within',
  source: 't of variances on a log scale (delta method): for many runs',
  ...{ exact: String(Number(Math.sqrt(1.25).toPrecision(6))), claim: 'covers' },
  experiment: ({ normal }) => {
    const runs = times(40, () => {
      const own = 0.5 * normal();
      return momentsOf(times(50, () => own + normal()));
    });
    return holds(spreadInterval(runs, LEVEL), Math.sqrt(1.25));
  },
});

/** One interval by itself, on plain draws. */
export const INTERVALS: readonly Calibration[] = [
  ...means,
  ...shares,
  quantile(50, 0.5),
  quantile(60, 0.9),
  ...ratios,
  spread,
];
