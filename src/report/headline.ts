import type { Comparison, MeasureComparison, Row } from '../experiment/comparison.ts';
import type { Verdict } from '../experiment/paired.ts';
import { formatOf } from './format.ts';
import { listed, quotedOf } from './words.ts';

/** The measure that a line is for. */
export const FIRST = 'throughput_per_h';
/** More names than these make no sentence. */
const NAMED = 4;

const are = (names: readonly unknown[]) => (names.length === 1 ? 'is' : 'are');

function named(rows: readonly Row[], tell: (row: Row) => string): string {
  return rows.length > NAMED ? `${rows.length} policies` : listed(rows.map(tell));
}

/**
 * What the experiment says of the output of the line, of all policies in one sentence; null where there are no two to
 * tell of.
 * @param others those that were compared with the baseline and can be chosen
 */
export function headline({ measures, baseline }: Comparison, others: readonly string[]): string | null {
  const compared = measures.find(({ measure }) => measure.key === FIRST);
  const rows =
    compared?.rows.filter(({ policy, verdict }) => verdict !== null && others.includes(policy)) ?? [];
  if (!compared || rows.length < 2) return null;
  const { name } = compared.measure;
  const of = (word: Verdict) => rows.filter(({ verdict }) => verdict === word);
  const [better, worse, open] = [of('better'), of('worse'), of('undecided')];
  const alike = of('no difference worth having');
  if (open.length === rows.length)
    return `In ${name}, none of the ${rows.length} policies is surely better or worse than ${baseline} so far.`;
  const quoted = quotedOf(rows.map(({ policy }) => policy));
  const sized = sizedBy(compared, quoted);
  const against = (found: readonly Row[], word: string) =>
    found.length > 0 ? [`${named(found, sized)} ${are(found)} ${word} than ${baseline}`] : [];
  const clauses = [
    ...against(better, 'better'),
    ...against(worse, 'worse'),
    ...(alike.length > 0
      ? [
          `${named(alike, ({ policy }) => quoted(policy))} ${alike.length === 1 ? 'makes' : 'make'} no difference worth having`,
        ]
      : []),
    ...(open.length > 0 ? [`${named(open, ({ policy }) => quoted(policy))} ${are(open)} undecided`] : []),
  ];
  return `In ${name}, ${clauses.join('; ')}.`;
}

/** A policy with its difference to the baseline. */
function sizedBy(compared: MeasureComparison, quoted: (name: string) => string): (row: Row) => string {
  const format = formatOf(compared);
  return ({ policy, difference }) =>
    `${quoted(policy)} (${format.signed(difference!.value)} ${format.differenceUnit}, ${format.interval(difference!)})`;
}
