import { LEVEL } from '../experiment/comparison.ts';
import { percentLevel } from './cells.ts';

const SHARE = `${percentLevel(LEVEL)}\u00a0%`;

/** What the page says of each kind of estimate and how its interval is made. */
export function spreadTerms(withTargets: boolean): [string, string][] {
  return [
    [
      'mean',
      "Its interval, and that of a difference, is by Student's t. It rests on means of runs being near normal.",
    ],
    [
      'skewed',
      'Where few runs lie far out to one side, a t interval misses more often than it says. Cochran\u2019s rule asks for 25 runs ' +
        'times the squared skewness; where there are fewer, and the skewness is more than chance, the measure has a warning. ' +
        'More seeds help; so does going by the median.',
    ],
    [
      'median, bad run',
      'Half of the runs give less than the median; one run in ten is worse than a bad run. The intervals go from one run to ' +
        `another, in order of value, so that they hold at ${SHARE} whatever law the runs follow.`,
    ],
    [
      'over all runs',
      'A ratio with what is above its line and what is below it each added up over all runs, as if they were one long run; the ' +
        'mean of runs gives each run the same weight. Its interval is by the jackknife: the runs are left out one by one.',
    ],
    ...(withTargets
      ? ([
          [
            'target',
            'Of each policy, the share of runs that meet it. The interval is by Wilson\u2019s score, which holds near 0 and near 100\u00a0%, too. More ' +
              'seeds make the interval narrower.',
          ],
        ] as [string, string][])
      : []),
  ];
}
