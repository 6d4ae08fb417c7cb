import { type Comparison, LEVEL } from '../experiment/comparison.ts';
import type { Skew } from '../experiment/skew.ts';
import type { Spread } from '../experiment/spread.ts';
import type { TargetFound } from '../experiment/targets.ts';
import type { Twins } from '../experiment/twins.ts';
import { basisOf } from './basis.ts';
import { cellsOf, headingOf, percentLevel } from './cells.ts';
import { besideVerdicts, notesOf } from './measure-notes.ts';
import type { Origin } from './origin.ts';
import { skewNotes } from './skew-text.ts';
import { SPREAD_HEADING, spreadCells, spreadNote } from './spread-cells.ts';
import { targetCells, targetNote } from './target-cells.ts';
import { TWINS_HEADING, twinColumns, twinNotes } from './twin-cells.ts';
import { verdictSentences } from './verdict.ts';

/** A table as it stands in a paper, every cell as it is written. */
export interface PaperTable {
  /** Names it among the others of the paper. */
  readonly key: string;
  readonly caption: string;
  readonly headings: readonly string[];
  /** Where the words of each column stand. */
  readonly sides: readonly ('left' | 'right')[];
  readonly rows: readonly (readonly string[])[];
  readonly notes: readonly string[];
}

/** A comparison as text with tables, for any kind of document. */
export interface Paper {
  readonly title: string;
  readonly verdict: readonly string[];
  readonly tables: readonly PaperTable[];
  /** What the intervals hold for. */
  readonly basis: string;
  readonly origin: Origin;
}

const SHARE = `${percentLevel(LEVEL)} % interval`;

function measureTables(comparison: Comparison, skews: readonly Skew[]): PaperTable[] {
  const several = comparison.policies.length > 1;
  return comparison.measures.map((compared): PaperTable => {
    const plain = cellsOf(compared, comparison);
    return {
      key: compared.measure.key,
      caption: headingOf(compared),
      headings: ['policy', 'mean', SHARE, ...(several ? ['difference', 'its interval', 'verdict'] : [])],
      sides: ['left', 'right', 'right', ...(several ? (['right', 'right', 'left'] as const) : [])],
      rows: plain.map(({ policy, mean, interval, difference, differenceInterval, verdict }) => [
        ...[policy, mean, interval],
        ...(several ? [difference, differenceInterval, verdict] : []),
      ]),
      notes: [
        ...skewNotes(skews, compared.measure.key),
        ...(several ? besideVerdicts(compared) : []),
        ...notesOf(compared, comparison),
      ],
    };
  });
}

/** One table a measure: beside each other they would be too wide for a page. */
function twinTables(twins: Twins, policies: readonly string[]): PaperTable[] {
  const columns = twinColumns(twins, policies);
  const notes = twinNotes(twins, policies);
  return columns.map(
    ({ name, unit, cells }, i): PaperTable => ({
      key: `twins-${i + 1}`,
      caption: `${TWINS_HEADING}: ${name}, ${unit}`,
      headings: ['policy', 'mean', SHARE],
      sides: ['left', 'right', 'right'],
      rows: policies.map((policy, row) => [policy, cells[row]!.mean, cells[row]!.interval]),
      notes: i === columns.length - 1 ? notes : [],
    }),
  );
}

function targetTables(targets: readonly TargetFound[], policies: readonly string[]): PaperTable[] {
  return targetCells(targets, policies).map(({ key, name, rows, notes }, i) => ({
    ...{ key, caption: `runs with ${name}` },
    headings: ['policy', 'share, %', SHARE, 'runs that met it'],
    sides: ['left', 'right', 'right', 'right'],
    rows: rows.map(({ policy, share, interval, met }) => [policy, share, interval, met]),
    notes: i === targets.length - 1 ? [...notes, targetNote(targets)] : notes,
  }));
}

/** How the runs lie, one table a measure. */
function spreadTables({ measures, seeds }: Spread, policies: readonly string[]): PaperTable[] {
  return measures.map((found, i) => ({
    key: `spread-${found.measure.key}`,
    caption: `${SPREAD_HEADING}: ${found.measure.name}, ${found.measure.shown.unit}`,
    headings: ['policy', 'median', SHARE, 'bad run', SHARE],
    sides: ['left', 'right', 'right', 'right', 'right'],
    rows: spreadCells(found, policies).map((cells) => [
      ...[cells.policy, cells.median, cells.medianInterval, cells.bad, cells.badInterval],
    ]),
    notes: i === measures.length - 1 ? [spreadNote(seeds)] : [],
  }));
}

export function paperOf(
  comparison: Comparison,
  twins: Twins | undefined,
  {
    title,
    origin,
    spread,
    targets = [],
  }: Pick<Paper, 'title' | 'origin'> & { spread?: Spread; targets?: readonly TargetFound[] },
): Paper {
  const { policies } = comparison;
  return {
    title,
    verdict: verdictSentences(comparison),
    tables: [
      ...targetTables(targets, policies),
      ...measureTables(comparison, spread?.skews ?? []),
      ...(spread && spread.seeds > 1 ? spreadTables(spread, policies) : []),
      ...(twins ? twinTables(twins, policies) : []),
    ],
    basis: basisOf(comparison, LEVEL),
    origin,
  };
}
