import type { Comparison, MeasureComparison, Row } from '../experiment/comparison.ts';
import { formatOf } from './format.ts';
import { counted } from './words.ts';

/** One row of a measure's table, every cell as it is written. */
export interface Cells {
  readonly policy: string;
  readonly mean: string;
  readonly interval: string;
  readonly difference: string;
  readonly differenceInterval: string;
  /** `better`, `worse`, `undecided`, `no change`, `baseline`, `bound`, `no claim`, `not compared` or `no value`. */
  readonly verdict: string;
}

/** The rows of one measure's table, one for every policy, those without a value included. */
export function cellsOf(compared: MeasureComparison, { policies, baseline, bound }: Comparison): Cells[] {
  const format = formatOf(compared);
  const wordOf = ({ policy, verdict, difference }: Row) => {
    if (policy === baseline) return 'baseline';
    if (policy === bound) return 'bound';
    return verdict ?? (difference ? 'no claim' : 'not compared');
  };
  return policies.map((policy) => {
    const row = compared.rows.find((found) => found.policy === policy);
    if (!row) {
      return { policy, mean: '', interval: '', difference: '', differenceInterval: '', verdict: 'no value' };
    }
    return {
      policy,
      mean: format.value(row.estimate.value),
      interval: format.interval(row.estimate),
      difference: row.difference ? format.signed(row.difference.value) : '',
      differenceInterval: row.difference ? format.interval(row.difference) : '',
      verdict: wordOf(row),
    };
  });
}

/** `throughput, good /h (higher is better)`. */
export function headingOf({ measure }: MeasureComparison): string {
  return `${measure.name}, ${measure.shown.unit} (${measure.better} is better)`;
}

/** What the reader of one measure's table must know besides: its differences' unit, and values made from fewer runs. */
export function notesOf(compared: MeasureComparison, { policies, seeds }: Comparison): string[] {
  const { unit, differenceUnit } = formatOf(compared);
  const unitNote =
    policies.length > 1 && differenceUnit !== unit ? [`Differences are in ${differenceUnit}.`] : [];
  const fewer = compared.rows
    .filter(({ estimate }) => estimate.runs < seeds)
    .map(({ policy, estimate }) => `${policy}: ${estimate.runs} of ${counted(seeds, 'run')} gave a value.`);
  return [...unitNote, ...fewer];
}

/** How many runs there are and what the intervals hold for. */
export function basisOf(
  { policies, baseline, bound, seeds, comparisons }: Comparison,
  level: number,
): string {
  const runs = counted(policies.length * seeds, 'run');
  const made =
    policies.length === 1
      ? `${runs} of one policy, each under its own seed.`
      : `${runs}: ${bound === null ? `${policies.length} policies` : `${counted(policies.length - 1, 'policy', 'policies')} and the bound`}, each under the same ${counted(seeds, 'seed')}.`;
  const share = `${percentLevel(level)} %`;
  if (seeds < 2) return `${made} One run gives no interval.`;
  if (policies.length === 1) return `${made} Each interval holds by itself at ${share}.`;
  const widened =
    comparisons === 1
      ? 'there is one comparison, so they need no widening'
      : `each is widened by Bonferroni's inequality for ${comparisons} comparisons`;
  const others = policies.filter((policy) => policy !== baseline && policy !== bound);
  if (others.length === 0)
    return `${made} Each interval holds by itself at ${share}, that of the difference of the bound, too.`;
  return (
    `${made} The intervals of the differences hold together at ${share}: ${widened}. ` +
    `The intervals of the means hold each by itself at ${share}${bound === null ? '' : ', and so do those of the differences of the bound'}.`
  );
}

/** 0.95 as `95`. */
export function percentLevel(level: number): string {
  return String(Number((level * 100).toPrecision(6)));
}
