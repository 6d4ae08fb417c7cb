import { Chalk, type ChalkInstance } from 'chalk';
import { type Comparison, LEVEL, type MeasureComparison } from '../experiment/comparison.ts';
import { STATES } from '../line/state.ts';
import { basisOf, cellsOf, headingOf, notesOf, percentLevel } from './cells.ts';
import { cut, padLeft, padRight, printable, widthOf, wrap } from './columns.ts';
import { percent } from './format.ts';
import { verdictSentences } from './verdict.ts';

export interface TerminalOptions {
  readonly title: string;
  readonly colour: boolean;
  /** Columns of the terminal; 80 is the least that is laid out for. */
  readonly width: number;
}

interface Column {
  readonly heading: string;
  readonly side: 'left' | 'right';
  readonly cells: readonly string[];
}

const GAP = 2;

/** Lines of a table without frames. The first column is cut to what the others leave of `width`. */
function tableLines(columns: readonly Column[], width: number, paint: (cell: string) => string): string[] {
  const widths = columns.map(({ heading, cells }) => Math.max(...[heading, ...cells].map(widthOf)));
  const rest = widths.slice(1).reduce((sum, own) => sum + own + GAP, 0);
  widths[0] = Math.min(widths[0]!, Math.max(6, width - rest));
  const line = (cell: (column: Column) => string, painted: (text: string) => string) =>
    columns
      .map((column, i) => {
        const text = i === 0 ? cut(cell(column), widths[0]!) : cell(column);
        const last = i === columns.length - 1;
        if (column.side === 'right') return painted(padLeft(text, widths[i]!));
        return painted(last ? text : padRight(text, widths[i]!));
      })
      .join(' '.repeat(GAP))
      .trimEnd();
  const rows = columns[0]!.cells.map((_, i) => line(({ cells }) => cells[i]!, paint));
  return [
    line(
      ({ heading }) => heading,
      (text) => text,
    ),
    ...rows,
  ];
}

/** Colour only repeats what the word says. */
function painter(ink: ChalkInstance): (cell: string) => string {
  return (cell) => {
    const word = cell.trim();
    if (word === 'better') return ink.green(cell);
    if (word === 'worse') return ink.red(cell);
    return cell;
  };
}

function measureLines(
  compared: MeasureComparison,
  comparison: Comparison,
  ink: ChalkInstance,
  width: number,
) {
  const rows = cellsOf(compared, comparison);
  const share = `${percentLevel(LEVEL)} %`;
  const several = comparison.policies.length > 1;
  const left: Column[] = [
    { heading: 'policy', side: 'left', cells: rows.map(({ policy }) => printable(policy)) },
    { heading: 'mean', side: 'right', cells: rows.map(({ mean }) => mean) },
    { heading: `${share} interval`, side: 'right', cells: rows.map(({ interval }) => interval) },
  ];
  const right: Column[] = [
    { heading: 'difference', side: 'right', cells: rows.map(({ difference }) => difference) },
    {
      heading: 'its interval',
      side: 'right',
      cells: rows.map(({ differenceInterval }) => differenceInterval),
    },
    { heading: 'verdict', side: 'left', cells: rows.map(({ verdict }) => verdict) },
  ];
  const [heading, ...body] = tableLines(several ? [...left, ...right] : left, width, painter(ink));
  const notes = notesOf(compared, comparison).flatMap((note) => wrap(printable(note), width));
  return [
    ink.bold(headingOf(compared)),
    ink.dim(heading!),
    ...body,
    ...notes.map((note) => ink.dim(note)),
    '',
  ];
}

function stateLines(
  { stateShares }: Comparison,
  policy: string,
  ink: ChalkInstance,
  width: number,
): string[] {
  const stations = Object.entries(stateShares[policy]!);
  const columns: Column[] = [
    { heading: 'station', side: 'left', cells: stations.map(([station]) => printable(station)) },
    ...STATES.map((state): Column => {
      const cells = stations.map(([, shares]) => percent(shares[state]));
      return { heading: state, side: 'right', cells };
    }),
  ];
  const [heading, ...body] = tableLines(columns, width, (cell) => cell);
  return [ink.bold('what the stations did, % of the counted time'), ink.dim(heading!), ...body, ''];
}

function titleLines(title: string, ink: ChalkInstance, width: number): string[] {
  return [...wrap(printable(title), width).map((line) => ink.bold(line)), ''];
}

/** The verdict, then a table a measure, then what the intervals hold for. */
export function comparisonText(comparison: Comparison, { title, colour, width }: TerminalOptions): string {
  const ink = new Chalk({ level: colour ? 1 : 0 });
  const verdict = verdictSentences(comparison).flatMap((text) => [...wrap(printable(text), width, '  '), '']);
  const to = wrap(
    `Differences are to ${printable(comparison.baseline)}, run by run under the same seed.`,
    width,
  );
  return [
    ...titleLines(title, ink, width),
    ...verdict,
    ...(comparison.policies.length > 1 ? [...to, ''] : []),
    ...comparison.measures.flatMap((compared) => measureLines(compared, comparison, ink, width)),
    ...wrap(basisOf(comparison, LEVEL), width),
    '',
  ].join('\n');
}

/** One policy by itself, the first: its measures, then what its stations did. */
export function singleText(comparison: Comparison, { title, colour, width }: TerminalOptions): string {
  const ink = new Chalk({ level: colour ? 1 : 0 });
  const { baseline, measures } = comparison;
  const alone: Comparison = { ...comparison, policies: [baseline], comparisons: 1 };
  const rows = measures.flatMap((compared) => {
    const found = cellsOf(compared, alone)[0]!;
    return found.verdict === 'no value' ? [] : [{ ...found, compared }];
  });
  const columns: Column[] = [
    {
      heading: 'measure',
      side: 'left',
      cells: rows.map(({ compared: { measure } }) => `${measure.name}, ${measure.shown.unit}`),
    },
    { heading: 'mean', side: 'right', cells: rows.map(({ mean }) => mean) },
    {
      heading: `${percentLevel(LEVEL)} % interval`,
      side: 'right',
      cells: rows.map(({ interval }) => interval),
    },
  ];
  const [heading, ...body] = tableLines(columns, width, (cell) => cell);
  const notes = measures.flatMap(({ measure, rows: all }) =>
    all
      .filter(({ policy, estimate }) => policy === baseline && estimate.runs < alone.seeds)
      .map(({ estimate }) => `${measure.name}: ${estimate.runs} of ${alone.seeds} runs gave a value.`),
  );
  return [
    ...titleLines(title, ink, width),
    ink.bold(cut(`policy ${printable(baseline)}`, width)),
    ink.dim(heading!),
    ...body,
    ...notes.flatMap((note) => wrap(note, width)),
    '',
    ...stateLines(comparison, baseline, ink, width),
    ...wrap(basisOf(alone, LEVEL), width),
    '',
  ].join('\n');
}
