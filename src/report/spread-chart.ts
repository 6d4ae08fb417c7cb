import * as Plot from '@observablehq/plot';
import type { Comparison } from '../experiment/comparison.ts';
import type { MeasureSpread } from '../experiment/spread.ts';
import { drawn, INK, type Options, WIDTH } from './charts.ts';
import { cut } from './columns.ts';
import { spreadCells } from './spread-cells.ts';

/** Height of a policy's row, its name above its runs, px. */
const ROW = 42;
/** More runs than these cannot be told apart; then evenly many of them are drawn, in order of value. */
const MOST_DOTS = 200;

/** The place of a dot, that of the median or that of a bad run. */
const thinned = (sorted: readonly number[]): readonly number[] =>
  sorted.length <= MOST_DOTS
    ? sorted
    : Array.from(
        { length: MOST_DOTS },
        (_, i) => sorted[Math.round((i * (sorted.length - 1)) / (MOST_DOTS - 1))]!,
      );

/** What the chart's signs mean. */
export const SPREAD_KEY =
  'Dot: a run, darker where several lie together. Upright line: the median. Diamond: a bad run, which one in ten is worse than.';

/** The runs of every policy in one measure, a row a policy. */
export function spreadChart(found: MeasureSpread, { policies }: Comparison): string {
  const { name, better, shown } = found.measure;
  const { factor, unit } = shown;
  const rows = found.rows.map(({ policy, values, median, bad }) => ({
    row: policies.indexOf(policy),
    values: values.map((value) => value * factor),
    median: median.value * factor,
    bad: bad.value * factor,
  }));
  const dots = rows.flatMap(({ row, values }) => thinned(values).map((value) => ({ row, value })));
  const ends = rows.map(({ values }) => [values[0]!, values.at(-1)!] as const);
  const [low, high] = [Math.min(...ends.map(([least]) => least)), Math.max(...ends.map(([, most]) => most))];
  const air = low === high ? Math.max(high * 0.1, 1) : (high - low) * 0.06;
  const names = policies.map((policy, row) => ({ row, name: cut(policy, 42) }));
  const told = spreadCells(found, policies).map(
    ({ policy, median, bad }) => `${policy}: median ${median}, bad run ${bad}`,
  );
  const options: Options = {
    width: WIDTH,
    height: policies.length * ROW + 44,
    marginLeft: 12,
    marginRight: 12,
    marginTop: 0,
    marginBottom: 40,
    x: {
      domain: [Math.max(0, low - air), high + air],
      label: unit,
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: 4,
      grid: true,
    },
    y: {
      domain: policies.map((_, row) => row),
      type: 'band',
      paddingInner: 0.6,
      paddingOuter: 0.5,
      axis: null,
    },
    marks: [
      Plot.dot(dots, { y: 'row', x: 'value', r: 3, fill: INK, fillOpacity: 0.28 }),
      Plot.tickX(rows, { y: 'row', x: 'median', stroke: INK, strokeWidth: 2 }),
      Plot.dot(rows, {
        ...{ y: 'row', x: 'bad', r: 5, symbol: 'diamond' },
        ...{ stroke: INK, strokeWidth: 1.6, fill: 'var(--paper, #fff)' },
      }),
      Plot.text(names, {
        ...{ y: 'row', text: 'name', dy: -17, frameAnchor: 'left', fontWeight: 600 },
        ...{ fill: INK, stroke: 'var(--paper, #fff)', strokeWidth: 4 },
      }),
    ],
  };
  return drawn(options, 'spread', `${name}, ${unit} (${better} is better), every run. ${told.join('; ')}.`);
}
