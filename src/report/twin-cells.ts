import { LEVEL } from '../experiment/comparison.ts';
import { twinSkews } from '../experiment/skew.ts';
import type { Twins } from '../experiment/twins.ts';
import { percentLevel } from './cells.ts';
import { durationText } from './duration.ts';
import { formatOf } from './format.ts';
import { skewText } from './skew-text.ts';
import { counted, listed } from './words.ts';

export const TWINS_HEADING = 'what the disturbances cost, against the same seeds without them';

/** One measure against the twins, a cell a policy. */
export interface TwinColumn {
  readonly name: string;
  readonly unit: string;
  readonly meaning: string;
  readonly source: string;
  /** A dash and no interval where no run of the policy gives a value. */
  readonly cells: readonly { readonly mean: string; readonly interval: string }[];
}

/** The measures as they are shown, in their order. */
export function twinColumns({ measures }: Twins, policies: readonly string[]): TwinColumn[] {
  return measures.flatMap((compared) => {
    const { measure, rows } = compared;
    const nothing = ({ value, lower, upper }: (typeof rows)[number]['estimate']) =>
      !value && !lower && !upper;
    if (measure.seldom && rows.every(({ estimate }) => nothing(estimate))) return [];
    const format = formatOf(compared);
    const cells = policies.map((policy) => {
      const estimate = rows.find((row) => row.policy === policy)?.estimate;
      if (estimate === undefined) return { mean: '\u2013', interval: '' };
      const { value, lower } = estimate;
      return { mean: format.value(value), interval: lower === null ? '' : format.interval(estimate) };
    });
    const { name, shown, meaning, source } = measure;
    return [{ name, unit: shown.unit, meaning, source, cells }];
  });
}

/** What a reader of the table must know besides. */
export function twinNotes(twins: Twins, policies: readonly string[]): string[] {
  const { rolling, seeds, runs } = twins;
  const told = (of: (own: Twins['runs']) => string | null) =>
    policies.flatMap((policy) => {
      const text = of(runs.filter((run) => run.policy === policy));
      return text === null ? [] : [`${policy} ${text}`];
    });
  const short = told((own) => {
    const number = own.filter(({ values }) => values.time_to_recover_s === null).length;
    return number > 0 ? `${number}` : null;
  });
  const answered = told((own) => {
    const sum = (key: 'disturbed' | 'answered') => own.reduce((all, run) => all + run[key], 0);
    return sum('answered') > 0 ? `${sum('answered')} of ${sum('disturbed')}` : null;
  });
  return [
    'A twin is the same policy under the same seed without the disturbances; breakdowns and all else stay. What a ' +
      'policy costs when nothing disturbs the line is no loss here: it shows in the undisturbed throughput.',
    `The rolling rate goes back over ${durationText(rolling.window)}. ` +
      (seeds > 1
        ? `Intervals: ${percentLevel(LEVEL)} %, each by itself.`
        : 'One run of each policy gives no interval.'),
    ...(short.length > 0
      ? [
          `Of ${counted(seeds, 'run')}, these still fell short at the end: ${listed(short)}. Their time to recover is not ` +
            'known and not in the mean, which is therefore too short.',
        ]
      : []),
    ...(answered.length > 0
      ? [
          'Disturbances that a response answered while they lasted, which alone are in the time to notice: ' +
            `${listed(answered)}.`,
        ]
      : []),
    ...skewText(twinSkews(twins)),
  ];
}
