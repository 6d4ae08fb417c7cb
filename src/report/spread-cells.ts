import { type Comparison, LEVEL } from '../experiment/comparison.ts';
import type { MeasureSpread, Spread } from '../experiment/spread.ts';
import type { Estimate } from '../statistics/estimate.ts';
import { fewestForQuantile } from '../statistics/quantile-interval.ts';
import { percentLevel } from './cells.ts';
import { type Format, formatOf } from './format.ts';
import { counted } from './words.ts';

export const SPREAD_HEADING =
  'how the runs lie: half of them below the median, one in ten worse than a bad run';

/** A policy's row, every cell as it is written; empty where no run gives a value, and for an interval without ends. */
interface SpreadCells {
  readonly policy: string;
  readonly median: string;
  readonly medianInterval: string;
  readonly bad: string;
  readonly badInterval: string;
}

/** How values of one measure's spread are written. */
const formatFor = ({ measure, rows }: MeasureSpread): Format =>
  formatOf({
    measure,
    rows: rows.flatMap(({ median, bad }) => [{ estimate: median }, { estimate: bad }]),
  });

const ends = (format: Format, estimate: Estimate): string =>
  estimate.lower === null ? '' : format.interval(estimate);

/** A row for each of the policies. */
export function spreadCells(found: MeasureSpread, policies: readonly string[]): SpreadCells[] {
  const format = formatFor(found);
  return policies.map((policy) => {
    const row = found.rows.find((one) => one.policy === policy);
    if (!row) return { policy, median: '\u2013', medianInterval: '', bad: '\u2013', badInterval: '' };
    return {
      policy,
      median: format.value(row.median.value),
      medianInterval: ends(format, row.median),
      bad: format.value(row.bad.value),
      badInterval: ends(format, row.bad),
    };
  });
}

/** What the runs are enough for. */
export function spreadNote(seeds: number): string {
  const share = `${percentLevel(LEVEL)} %`;
  const [median, bad] = [fewestForQuantile(0.5, LEVEL), fewestForQuantile(0.9, LEVEL)];
  if (seeds >= bad)
    return `Intervals: ${share}, each by itself, by order statistics, which need no law of the runs.`;
  const few = counted(seeds, 'run');
  return seeds < median
    ? `${few}: an interval of a median takes ${median} runs, one of a bad run ${bad}.`
    : `${few}: an interval of a bad run takes ${bad}. Those of medians: ${share}, each by itself, by order statistics.`;
}

/** A ratio by the totals of all runs, beside the mean of what the runs gave. */
interface OverAllCells {
  readonly policy: string;
  readonly mean: string;
  readonly overAll: string;
  readonly interval: string;
}

interface OverAll {
  readonly measure: MeasureSpread['measure'];
  readonly rows: readonly OverAllCells[];
}

/** The ratios that come to something else by totals, as they are written; without those where no policy differs. */
export function overAllCells({ measures }: Spread, comparison: Comparison): OverAll[] {
  return measures.flatMap(({ measure, rows }) => {
    const compared = comparison.measures.find((one) => one.measure.key === measure.key);
    if (!compared) return [];
    const format = formatOf(compared);
    const cells = rows.flatMap(({ policy, overAll }) => {
      const mean = compared.rows.find((row) => row.policy === policy)?.estimate.value;
      if (!overAll || mean === undefined) return [];
      const [one, other] = [format.value(mean), format.value(overAll.value)];
      return [{ policy, mean: one, overAll: other, interval: ends(format, overAll) }];
    });
    return cells.some(({ mean, overAll }) => mean !== overAll) ? [{ measure, rows: cells }] : [];
  });
}
