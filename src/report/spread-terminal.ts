import { LEVEL } from '../experiment/comparison.ts';
import type { Spread } from '../experiment/spread.ts';
import type { TargetFound } from '../experiment/targets.ts';
import { percentLevel } from './cells.ts';
import { printable } from './columns.ts';
import { SPREAD_HEADING, spreadCells, spreadNote } from './spread-cells.ts';
import type { Column } from './table-lines.ts';
import { targetCells, targetNote } from './target-cells.ts';

/** A table with its heading and what stands below it. */
interface Titled {
  readonly title: string;
  readonly columns: readonly Column[];
  readonly notes: readonly string[];
}

const right = (heading: string, cells: readonly string[]): Column => ({ heading, side: 'right', cells });
const interval = `${percentLevel(LEVEL)} % interval`;

/** How the runs of one policy lie, a row a measure. */
export function spreadTable({ measures, seeds }: Spread, policy: string): Titled {
  const rows = measures.flatMap((found) => {
    const { name, shown } = found.measure;
    const [cells] = spreadCells(found, [policy]);
    return found.rows.some((row) => row.policy === policy)
      ? [{ ...cells!, measure: `${name}, ${shown.unit}` }]
      : [];
  });
  const columns: Column[] = [
    { heading: 'measure', side: 'left', cells: rows.map(({ measure }) => measure) },
    right(
      'median',
      rows.map(({ median }) => median),
    ),
    right(
      'its interval',
      rows.map(({ medianInterval }) => medianInterval),
    ),
    right(
      'bad run',
      rows.map(({ bad }) => bad),
    ),
    right(
      'its interval',
      rows.map(({ badInterval }) => badInterval),
    ),
  ];
  return { title: SPREAD_HEADING, columns, notes: [spreadNote(seeds)] };
}

/** How often each policy met each target. */
export function targetTables(targets: readonly TargetFound[], policies: readonly string[]): Titled[] {
  return targetCells(targets, policies).map(({ name, rows, notes }, i) => ({
    title: `runs with ${name}`,
    columns: [
      { heading: 'policy', side: 'left', cells: rows.map(({ policy }) => printable(policy)) },
      right(
        'share, %',
        rows.map(({ share }) => share),
      ),
      right(
        interval,
        rows.map((row) => row.interval),
      ),
      right(
        'runs',
        rows.map(({ met }) => met),
      ),
    ],
    notes: i === targets.length - 1 ? [...notes, targetNote(targets)] : notes,
  }));
}
