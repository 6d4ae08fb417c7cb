import type { MeasureComparison } from '../experiment/comparison.ts';
import { formatOf } from './format.ts';
import { wholeVerdict } from './judged-text.ts';

/** One pair as it is written. */
interface PairCells {
  readonly policy: string;
  readonly other: string;
  readonly difference: string;
  readonly interval: string;
  readonly chance: string;
  /** One of the four words, `no claim` or `not compared`. */
  readonly verdict: string;
  /** The same with what belongs to it. */
  readonly whole: string;
}

export const PAIR_HEADINGS = [
  'policy',
  'against',
  'difference',
  'its interval',
  'chance',
  'verdict',
] as const;

function chanceText(chance: number | null): string {
  if (chance === null) return '';
  return chance < 0.001 ? '<0.001' : chance.toFixed(3);
}

/** Each policy of a measure against each before it. */
export function pairCells({ measure, worth, pairs }: MeasureComparison): PairCells[] {
  const rows = pairs.flatMap(({ difference }) => (difference ? [{ estimate: difference, difference }] : []));
  const format = rows.length > 0 ? formatOf({ measure, worth, rows }) : undefined;
  return pairs.map((pair) => {
    const { policy, other, difference, verdict, chance } = pair;
    const word = verdict ?? (difference ? 'no claim' : 'not compared');
    return {
      ...{ policy, other, chance: chanceText(chance), verdict: word },
      difference: difference ? format!.signed(difference.value) : '',
      interval: difference ? format!.interval(difference) : '',
      whole: verdict === null ? word : wholeVerdict(pair, worth),
    };
  });
}

/** What the table of all pairs holds for. */
export const pairsNote = (comparisons: number, share: string): string =>
  `All ${comparisons} intervals of pairs, over all measures, hold together at ${share} %, by Bonferroni's inequality; they are ` +
  'wider than those to the baseline, since more is asked. The chance is that of a difference so far from zero were there none, ' +
  'adjusted after Holm for all of them.';
