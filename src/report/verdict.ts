import type { Comparison, MeasureComparison, Row } from '../experiment/comparison.ts';
import type { Verdict } from '../experiment/paired.ts';
import { formatOf } from './format.ts';
import { FIRST, headline } from './headline.ts';
import { bestText, moreText, surelyText, unchanged } from './judged-text.ts';
import { listed } from './words.ts';

type Standing = Verdict | 'not compared';

const ORDER: readonly Standing[] = [
  'better',
  'worse',
  'no difference worth having',
  'undecided',
  'not compared',
];

const rowOf = ({ rows }: MeasureComparison, policy: string): Row | undefined =>
  rows.find((row) => row.policy === policy);

/** The measure; of the output, and of what it was asked how much is worth having, the difference with its interval too. */
function told(compared: MeasureComparison, policy: string): string {
  const { measure, worth } = compared;
  const row = rowOf(compared, policy);
  if (!row?.difference) return measure.name;
  const format = formatOf(compared);
  const { difference } = row;
  const size = `${format.signed(difference.value)} ${format.differenceUnit}, ${format.interval(difference)}`;
  // Of the other measures the tables tell the size.
  const sized = measure.key === FIRST || worth > 0;
  const parts = [sized ? size : '', surelyText(row), moreText(row, worth)].filter((part) => part !== '');
  return parts.length > 0 ? `${measure.name} (${parts.join('; ')})` : measure.name;
}

function againstBaseline({ measures, baseline }: Comparison, policy: string): string {
  const changed = measures.filter((compared) => {
    const row = rowOf(compared, policy);
    return row === undefined || !unchanged(row);
  });
  const clauses = ORDER.flatMap((word) => {
    const found = changed.filter((compared) => (rowOf(compared, policy)?.verdict ?? 'not compared') === word);
    return found.length > 0 ? [`${word} in ${listed(found.map((compared) => told(compared, policy)))}`] : [];
  });
  const said = clauses.length > 0 ? clauses.join('; ') : 'no difference worth having, no change in any run';
  return `${policy} against ${baseline}: ${said}.`;
}

/** Who may be best in what the line is for. */
function bestSentence({ measures }: Comparison): string[] {
  const found = measures.find(({ measure }) => measure.key === FIRST);
  return found && found.best.length > 2 ? [bestText(found.best, found.measure.name)] : [];
}

/** What the intervals allow to be said, and no more, in sentences; of a bound nothing, since nobody can choose it. */
export function verdictSentences(comparison: Comparison): string[] {
  const { policies, baseline, bound, seeds } = comparison;
  const others = policies.filter((policy) => policy !== baseline && policy !== bound);
  if (others.length === 0) return [`There is nothing to compare: ${baseline} is the only policy.`];
  if (seeds < 2) {
    return ['One run of each policy gives no interval, so nothing is claimed about their differences.'];
  }
  const first = headline(comparison, others);
  const sentences = others.map((policy) => againstBaseline(comparison, policy));
  return [...(first === null ? [] : [first]), ...sentences, ...bestSentence(comparison)];
}
