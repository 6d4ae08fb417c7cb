import type { Comparison, MeasureComparison, Row, Verdict } from '../experiment/comparison.ts';
import { formatOf } from './format.ts';
import { listed } from './words.ts';

type Standing = Verdict | 'not compared';

function rowOf(compared: MeasureComparison, policy: string): Row | undefined {
  return compared.rows.find((row) => row.policy === policy);
}

/** Where a policy stands against the baseline in one measure. */
function standing(compared: MeasureComparison, policy: string): Standing {
  return rowOf(compared, policy)?.verdict ?? 'not compared';
}

/** The measure with the difference and its interval; of what is undecided, the output's alone is worth the words. */
function told(compared: MeasureComparison, policy: string): string {
  const { measure } = compared;
  const row = rowOf(compared, policy);
  const sizeMatters = row?.verdict !== 'undecided' || measure.key === 'throughput_per_h';
  if (!row?.difference || !sizeMatters) return measure.name;
  const format = formatOf(compared);
  const { difference } = row;
  return `${measure.name} (${format.signed(difference.value)} ${format.differenceUnit}, ${format.interval(difference)})`;
}

function againstBaseline({ measures, baseline }: Comparison, policy: string): string {
  const clauses = (['better', 'worse', 'undecided', 'not compared'] as const).flatMap((word) => {
    const found = measures.filter((compared) => standing(compared, policy) === word);
    return found.length > 0 ? [`${word} in ${listed(found.map((compared) => told(compared, policy)))}`] : [];
  });
  const said = clauses.length > 0 ? clauses.join('; ') : 'no change in any run';
  return `${policy} against ${baseline}: ${said}.`;
}

/** What the intervals allow to be said, and no more, in sentences; of a bound nothing, since nobody can choose it. */
export function verdictSentences(comparison: Comparison): string[] {
  const { policies, baseline, bound, seeds } = comparison;
  const others = policies.filter((policy) => policy !== baseline && policy !== bound);
  if (others.length === 0) return [`There is nothing to compare: ${baseline} is the only policy.`];
  if (seeds < 2) {
    return ['One run of each policy gives no interval, so nothing is claimed about their differences.'];
  }
  const sentences = others.map((policy) => againstBaseline(comparison, policy));
  if (others.length < 2) return sentences;
  return [...sentences, `Each policy is compared with ${baseline} alone, not with the other policies.`];
}
