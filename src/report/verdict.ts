import type { Comparison, MeasureComparison, Row } from '../experiment/comparison.ts';
import { formatOf } from './format.ts';
import { listed } from './words.ts';

/** The measures whose size of difference is told in words; the others' stand in the tables. */
const TOLD = new Set(['throughput_per_h', 'fit_rate']);

type Standing = 'better' | 'worse' | 'undecided' | 'not compared';

function rowOf(compared: MeasureComparison, policy: string): Row | undefined {
  return compared.rows.find((row) => row.policy === policy);
}

/** Where a policy stands against the baseline in one measure. */
function standing(compared: MeasureComparison, policy: string): Standing {
  return rowOf(compared, policy)?.verdict ?? 'not compared';
}

function told(compared: MeasureComparison, policy: string): string {
  const { measure } = compared;
  const difference = rowOf(compared, policy)?.difference;
  if (!TOLD.has(measure.key) || !difference || difference.lower === null) return measure.name;
  const format = formatOf(compared);
  return `${measure.name} ${format.signed(difference.value)} ${format.differenceUnit} (${format.interval(difference)})`;
}

function againstBaseline({ measures, baseline }: Comparison, policy: string): string {
  const clauses = (['better', 'worse', 'undecided', 'not compared'] as const).flatMap((word) => {
    const found = measures.filter((compared) => standing(compared, policy) === word);
    return found.length > 0 ? [`${word} in ${listed(found.map((compared) => told(compared, policy)))}`] : [];
  });
  return `${policy} against ${baseline}: ${clauses.join('; ')}.`;
}

/** Whether some policy gains without losing, as far as the intervals tell. */
function tradeOff({ policies, baseline, measures }: Comparison): string {
  const others = policies.filter((policy) => policy !== baseline);
  const has = (policy: string, word: Standing) =>
    measures.some((compared) => standing(compared, policy) === word);
  const gaining = others.filter((policy) => has(policy, 'better'));
  const unharmed = gaining.filter((policy) => !has(policy, 'worse'));
  const throughout = unharmed.filter((policy) => !has(policy, 'undecided') && !has(policy, 'not compared'));
  const be = (names: readonly string[]) => `${listed(names)} ${names.length === 1 ? 'is' : 'are'}`;

  if (throughout.length > 0) return `${be(throughout)} better than ${baseline} in every measure here.`;
  if (unharmed.length > 0) {
    return (
      `${be(unharmed)} better than ${baseline} in at least one measure and found worse in none, ` +
      'but what is undecided or not compared may still hide a loss.'
    );
  }
  if (gaining.length > 0) {
    return `Every policy here that is found better than ${baseline} in one measure is found worse in another.`;
  }
  return `No policy here is found better than ${baseline} in any measure.`;
}

/** What the intervals allow to be said, and no more, in sentences. */
export function verdictSentences(comparison: Comparison): string[] {
  const { policies, baseline, seeds } = comparison;
  if (policies.length < 2) return [`There is nothing to compare: ${baseline} is the only policy.`];
  if (seeds < 2) {
    return ['One run of each policy gives no interval, so nothing is claimed about their differences.'];
  }
  return [
    ...policies.filter((policy) => policy !== baseline).map((policy) => againstBaseline(comparison, policy)),
    tradeOff(comparison),
  ];
}
