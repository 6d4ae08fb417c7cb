import type { Measure, MeasureKey } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import { chanceOfNone, holm } from '../statistics/comparing/holm.ts';
import { allPairs } from '../statistics/comparing/pairs.ts';
import { type Judged, judge, pairedDifferences } from './paired.ts';

/** What is said of one policy against another that stands before it, the first among them. */
export interface PairRow extends Judged {
  readonly policy: string;
  readonly other: string;
  /** The chance of a mean at least so far from zero were there no difference, adjusted after Holm for all pairs of all measures; null where there is no interval. */
  readonly chance: number | null;
}

interface Asked {
  readonly measure: Measure & { readonly key: MeasureKey };
  readonly worth: number;
}

/** How many intervals of pairs hold together: all pairs, in every measure. */
export const pairComparisons = (policies: number, measures: number): number =>
  allPairs(policies).length * measures;

/**
 * Every pair of policies in every measure, in the order of the measures. All intervals hold together at `level`, by
 * Bonferroni's inequality, so that no pair is told to differ here which is undecided against the baseline.
 * @param runs by policy, in the order of the seeds, which are the same for all
 */
export function everyPair(
  runs: ReadonlyMap<string, readonly Outcome[]>,
  measures: readonly Asked[],
  level: number,
): PairRow[][] {
  const names = [...runs.keys()];
  const pairs = allPairs(names.length).map(([one, other]) => [names[one]!, names[other]!] as const);
  const comparisons = pairComparisons(names.length, measures.length);
  const asked = measures.map(({ measure, worth }) =>
    pairs.map(([policy, other]) => ({
      ...{ policy, other, measure, worth },
      differences: pairedDifferences(runs.get(policy)!, runs.get(other)!, measure.key),
    })),
  );
  const tested = asked.flat().filter(({ differences }) => differences.length > 1);
  const chances = holm(tested.map(({ differences }) => chanceOfNone(differences)));
  const chanceOf = new Map(tested.map((one, i) => [one, chances[i]!]));
  return asked.map((own) =>
    own.map((one) => ({
      ...{ policy: one.policy, other: one.other, chance: chanceOf.get(one) ?? null },
      ...judge(one.differences, { better: one.measure.better, worth: one.worth, level, comparisons }),
    })),
  );
}
