import type { Comparison, MeasureComparison, Row } from '../experiment/comparison.ts';
import { formatOf } from './format.ts';
import { wholeVerdict } from './judged-text.ts';

/** One row of a measure's table, every cell as it is written. */
export interface Cells {
  readonly policy: string;
  readonly mean: string;
  readonly interval: string;
  readonly difference: string;
  readonly differenceInterval: string;
  /** One of the four words, or `baseline`, `bound`, `no claim`, `not compared` or `no value`. */
  readonly verdict: string;
  /** The same with what belongs to it, such as how many more runs would decide. */
  readonly whole: string;
}

/** The rows of one measure's table, one for every policy, those without a value included. */
export function cellsOf(compared: MeasureComparison, { policies, baseline, bound }: Comparison): Cells[] {
  const format = formatOf(compared);
  const placeOf = ({ policy, verdict, difference }: Row): string | null => {
    if (policy === baseline) return 'baseline';
    if (policy === bound) return 'bound';
    return verdict === null ? (difference ? 'no claim' : 'not compared') : null;
  };
  return policies.map((policy) => {
    const row = compared.rows.find((found) => found.policy === policy);
    if (!row) {
      const empty = { mean: '', interval: '', difference: '', differenceInterval: '' };
      return { policy, ...empty, verdict: 'no value', whole: 'no value' };
    }
    const place = placeOf(row);
    return {
      policy,
      mean: format.value(row.estimate.value),
      interval: format.interval(row.estimate),
      difference: row.difference ? format.signed(row.difference.value) : '',
      differenceInterval: row.difference ? format.interval(row.difference) : '',
      verdict: place ?? row.verdict!,
      whole: place ?? wholeVerdict(row, compared.worth),
    };
  });
}

/** `throughput, good /h (higher is better)`. */
export function headingOf({ measure }: Pick<MeasureComparison, 'measure'>): string {
  return `${measure.name}, ${measure.shown.unit} (${measure.better} is better)`;
}

/** 0.95 as `95`. */
export function percentLevel(level: number): string {
  return String(Number((level * 100).toPrecision(6)));
}
