import type { Comparison } from '../experiment/comparison.ts';
import { percentLevel } from './cells.ts';
import { amount } from './format.ts';
import { counted, listed } from './words.ts';

/** What was run. */
function runsOf({ policies, bound, seeds }: Comparison): string {
  const runs = counted(policies.length * seeds, 'run');
  if (policies.length === 1) return `${runs} of one policy${seeds > 1 ? ', each under its own seed' : ''}.`;
  const who =
    bound === null
      ? `${policies.length} policies`
      : `${counted(policies.length - 1, 'policy', 'policies')} and the bound`;
  return `${runs}: ${who}, each under the same ${counted(seeds, 'seed')}.`;
}

const widened = (comparisons: number): string =>
  comparisons === 1
    ? 'there is one comparison, so they need no widening'
    : `each is widened by Bonferroni's inequality for ${comparisons} comparisons`;

/** What a difference must exceed to be called better or worse. */
function worthText({ measures }: Comparison): string {
  const named = measures.filter(({ worth }) => worth > 0);
  if (named.length === 0) return 'Every difference counts as worth having, however small.';
  const amounts = named.map(({ measure, worth }) => `more than ${amount(worth, measure)} in ${measure.name}`);
  const rest = named.length < measures.length ? '; in the other measures every difference' : '';
  return `Worth having: ${listed(amounts)}${rest}.`;
}

/** How many runs there are and what the intervals hold for. */
export function basisOf(comparison: Comparison, level: number): string {
  const { policies, baseline, bound, seeds, comparisons, pairComparisons, measures } = comparison;
  const made = runsOf(comparison);
  const share = `${percentLevel(level)} %`;
  if (seeds < 2) return `${made} One run gives no interval.`;
  if (policies.length === 1) return `${made} Each interval holds by itself at ${share}.`;
  const others = policies.filter((policy) => policy !== baseline && policy !== bound);
  if (others.length === 0)
    return `${made} Each interval holds by itself at ${share}, that of the difference of the bound, too.`;
  const pairs =
    `Those of every pair hold together at ${share} by themselves, widened for ${pairComparisons}; ` +
    `so do the comparisons with the best, over ${counted(measures.length, 'measure')}.`;
  return [
    made,
    `Intervals are Student's t, those of differences of paired runs. ` +
      `Those of the differences to ${baseline} hold together at ${share}: ${widened(comparisons)}.`,
    ...(others.length > 1 ? [pairs] : []),
    `The intervals of the means hold each by itself at ${share}${bound === null ? '' : ', and so do those of the differences of the bound'}.`,
    worthText(comparison),
  ].join(' ');
}
