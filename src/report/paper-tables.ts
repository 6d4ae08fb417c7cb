import { type Comparison, LEVEL } from '../experiment/comparison.ts';
import type { Twins } from '../experiment/twins.ts';
import { basisOf } from './basis.ts';
import { cellsOf, headingOf, percentLevel } from './cells.ts';
import { besideVerdicts, notesOf } from './measure-notes.ts';
import type { Origin } from './origin.ts';
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

function measureTables(comparison: Comparison): PaperTable[] {
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
      notes: [...(several ? besideVerdicts(compared) : []), ...notesOf(compared, comparison)],
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

export function paperOf(
  comparison: Comparison,
  twins: Twins | undefined,
  { title, origin }: Pick<Paper, 'title' | 'origin'>,
): Paper {
  return {
    title,
    verdict: verdictSentences(comparison),
    tables: [...measureTables(comparison), ...(twins ? twinTables(twins, comparison.policies) : [])],
    basis: basisOf(comparison, LEVEL),
    origin,
  };
}
