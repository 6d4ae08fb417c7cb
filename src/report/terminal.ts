import { Chalk, type ChalkInstance } from 'chalk';
import type { CapabilityEstimate } from '../experiment/capabilities.ts';
import { type Comparison, LEVEL, type MeasureComparison } from '../experiment/comparison.ts';
import type { Recovered } from '../experiment/recovered.ts';
import type { EstimatedStocks } from '../experiment/stock-estimates.ts';
import type { Twins } from '../experiment/twins.ts';
import { STATES, type State } from '../line/state.ts';
import { withBoundMarked, withBoundMarkedInTwins } from './bound-text.ts';
import { capabilityRows } from './capability-text.ts';
import { basisOf, cellsOf, headingOf, notesOf, percentLevel } from './cells.ts';
import { cut, padLeft, padRight, printable, widthOf, wrap } from './columns.ts';
import { percent } from './format.ts';
import { RECOVERED_HEADING, recoveredNotes, recoveredRows } from './recovered-cells.ts';
import { occurring, STATE_LOOKS } from './state-words.ts';
import { stockRows } from './stock-rows.ts';
import { TWINS_HEADING, twinColumns, twinNotes } from './twin-cells.ts';
import { twinStory } from './twin-story.ts';
import { verdictSentences } from './verdict.ts';

export interface TerminalOptions {
  readonly title: string;
  readonly colour: boolean;
  /** Columns of the terminal; 80 is the least that is laid out for. */
  readonly width: number;
}

export interface Column {
  readonly heading: string;
  readonly side: 'left' | 'right';
  readonly cells: readonly string[];
}

const GAP = 2;
/** A first column narrower than this cuts most names. */
const LEAST_FIRST = 12;

function widthOfColumn({ heading, cells }: Column): number {
  return Math.max(...[...heading.split('\n'), ...cells].map(widthOf));
}

/** The columns as one table, or as several with the same first column where one would be too wide. */
function blocks([first, ...others]: readonly Column[], width: number): Column[][] {
  const room = width - Math.min(widthOfColumn(first!), LEAST_FIRST);
  const made: Column[][] = [];
  let left = 0;
  for (const column of others) {
    const needed = widthOfColumn(column) + 1;
    if (made.length === 0 || left < needed) {
      made.push([first!]);
      left = room;
    }
    made.at(-1)!.push(column);
    left -= needed;
  }
  return made;
}

interface Table {
  /** One line, or two where some heading is in two. */
  readonly heading: readonly string[];
  readonly body: readonly string[];
}

/**
 * Lines of a table without frames. A heading may have two lines. The first column is cut to what the others leave of
 * `width`; where that would be very little, they move closer together.
 */
function tableLines(columns: readonly Column[], width: number, paint: (cell: string) => string): Table {
  const headings = columns.map(({ heading }) => heading.split('\n'));
  const high = Math.max(...headings.map((lines) => lines.length));
  const widths = columns.map(widthOfColumn);
  const others = (gap: number) => widths.slice(1).reduce((sum, own) => sum + own + gap, 0);
  const gap = width - others(GAP) < Math.min(widths[0]!, LEAST_FIRST) ? 1 : GAP;
  widths[0] = Math.min(widths[0]!, Math.max(6, width - others(gap)));
  const line = (cell: (column: Column, i: number) => string, painted: (text: string) => string) =>
    columns
      .map((column, i) => {
        const text = i === 0 ? cut(cell(column, i), widths[0]!) : cell(column, i);
        const last = i === columns.length - 1;
        if (column.side === 'right') return painted(padLeft(text, widths[i]!));
        return painted(last ? text : padRight(text, widths[i]!));
      })
      .join(' '.repeat(gap))
      .trimEnd();
  const rows = columns[0]!.cells.map((_, row) => line(({ cells }) => cells[row]!, paint));
  const heading = Array.from({ length: high }, (_, row) =>
    line(
      (_, i) => headings[i]![row - high + headings[i]!.length] ?? '',
      (text) => text,
    ),
  );
  return { heading, body: rows };
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
  const { heading, body } = tableLines(several ? [...left, ...right] : left, width, painter(ink));
  const notes = notesOf(compared, comparison).flatMap((note) => wrap(printable(note), width));
  return [
    ink.bold(headingOf(compared)),
    ...heading.map((line) => ink.dim(line)),
    ...body,
    ...notes.map((note) => ink.dim(note)),
    '',
  ];
}

/** Always shown, for a reader looks for them; the other states only where some station was in them. */
const BASE_STATES: readonly State[] = ['working', 'starved', 'blocked', 'down', 'held'];

/** A table under a heading of its own, in several parts where it is too wide. */
export function shareLines(
  { title, columns }: { readonly title: string; readonly columns: readonly Column[] },
  ink: ChalkInstance,
  width: number,
): string[] {
  const tables = blocks(columns, width).map((block) => tableLines(block, width, (cell) => cell));
  return [
    ink.bold(title),
    ...tables.flatMap(({ heading, body }) => [...heading.map((line) => ink.dim(line)), ...body, '']),
  ];
}

function stateLines({ stateShares }: Comparison, policy: string, ink: ChalkInstance, width: number) {
  const shares = stateShares[policy]!;
  const stations = Object.entries(shares);
  const found = occurring([shares]);
  const shown = STATES.filter((state) => BASE_STATES.includes(state) || found.includes(state));
  const columns: Column[] = [
    { heading: 'station', side: 'left', cells: stations.map(([station]) => printable(station)) },
    ...shown.map((state): Column => {
      const cells = stations.map(([, own]) => percent(own[state]));
      return { heading: STATE_LOOKS[state].word.replace(' ', '\n'), side: 'right', cells };
    }),
  ];
  return shareLines({ title: 'what the stations did, % of the counted time', columns }, ink, width);
}

/** How busy the crews were; nothing where the line has none. */
function crewLines({ crewShares }: Comparison, policy: string, ink: ChalkInstance, width: number) {
  const crews = Object.entries(crewShares[policy]!);
  if (crews.length === 0) return [];
  const columns: Column[] = [
    { heading: 'crew', side: 'left', cells: crews.map(([crew]) => printable(crew)) },
    { heading: 'busy', side: 'right', cells: crews.map(([, share]) => percent(share)) },
  ];
  return shareLines({ title: 'what the crews did, % of the counted time', columns }, ink, width);
}

/** A table for each feature that was gauged and has limits. */
function capabilityLines(capabilities: readonly CapabilityEstimate[], ink: ChalkInstance, width: number) {
  return capabilities.flatMap((found) => {
    const rows = capabilityRows(found);
    if (rows.length === 0) return [];
    const columns: Column[] = [
      { heading: 'capability', side: 'left', cells: rows.map(({ name }) => name) },
      { heading: 'mean', side: 'right', cells: rows.map(({ mean }) => mean) },
      {
        heading: `${percentLevel(LEVEL)} % interval`,
        side: 'right',
        cells: rows.map(({ interval }) => interval),
      },
    ];
    const title = `${printable(found.feature)} as read at ${printable(found.gauge)}`;
    return shareLines({ title: cut(title, width), columns }, ink, width);
  });
}

/** How the limited stocks fared; nothing where there are none. */
function stockLines(
  { stocks }: Comparison,
  policy: string,
  estimated: EstimatedStocks,
  ink: ChalkInstance,
  width: number,
) {
  const rows = stockRows(stocks[policy]!, estimated[policy]);
  if (rows.names.length === 0) return [];
  const columns: Column[] = [
    { heading: 'stock', side: 'left', cells: rows.names.map(printable) },
    ...rows.columns.map(({ heading, cells }): Column => ({ heading, side: 'right', cells })),
  ];
  return shareLines({ title: 'how the limited stocks fared, mean of a run', columns }, ink, width);
}

/** What the disturbances cost, where twins were run. */
function twinLines(twins: Twins | undefined, comparison: Comparison, ink: ChalkInstance, width: number) {
  if (twins === undefined) return [];
  const { policies } = comparison;
  const columns: Column[] = [
    { heading: 'policy', side: 'left', cells: policies.map(printable) },
    ...twinColumns(twins, policies).map(({ name, unit, cells }): Column => {
      const told = cells.map(({ mean, interval }) => (interval === '' ? mean : `${mean} (${interval})`));
      return { heading: `${name},\n${unit}`, side: 'right', cells: told };
    }),
  ];
  const notes = twinNotes(twins, policies).flatMap((note) => [...wrap(printable(note), width), '']);
  const story = twinStory(twins, comparison).flatMap((text) => [...wrap(printable(text), width, '  '), '']);
  return [
    ...story,
    ...shareLines({ title: TWINS_HEADING, columns }, ink, width),
    ...notes.map((line) => ink.dim(line)),
  ];
}

/** How much of the recoverable loss each policy recovered, where there is a bound. */
function recoveredLines(recovered: Recovered | undefined, ink: ChalkInstance, width: number) {
  if (recovered === undefined) return [];
  const rows = recoveredRows(recovered);
  const columns: Column[] = [
    { heading: 'policy', side: 'left', cells: rows.map(({ policy }) => printable(policy)) },
    { heading: 'share recovered, %', side: 'right', cells: rows.map(({ share }) => share) },
    {
      heading: `${percentLevel(LEVEL)} % interval`,
      side: 'right',
      cells: rows.map(({ interval }) => interval),
    },
  ];
  const notes = recoveredNotes(recovered).flatMap((note) => [...wrap(printable(note), width), '']);
  const table =
    rows.length > 0
      ? shareLines({ title: RECOVERED_HEADING, columns }, ink, width)
      : [ink.bold(RECOVERED_HEADING)];
  return [...table, ...notes.map((line) => ink.dim(line))];
}

function titleLines(title: string, ink: ChalkInstance, width: number): string[] {
  return [...wrap(printable(title), width).map((line) => ink.bold(line)), ''];
}

/** The verdict, what the disturbances cost, what was recovered, then a table a measure, then what the intervals hold for. */
export function comparisonText(
  compared: Comparison,
  { title, colour, width }: TerminalOptions,
  twins?: Twins,
  recovered?: Recovered,
): string {
  const comparison = withBoundMarked(compared);
  const ink = new Chalk({ level: colour ? 1 : 0 });
  const verdict = verdictSentences(comparison).flatMap((text) => [...wrap(printable(text), width, '  '), '']);
  const to = wrap(
    `Differences are to ${printable(comparison.baseline)}, run by run under the same seed.`,
    width,
  );
  return [
    ...titleLines(title, ink, width),
    ...verdict,
    ...twinLines(twins && withBoundMarkedInTwins(twins, compared), comparison, ink, width),
    ...recoveredLines(recovered, ink, width),
    ...(comparison.policies.length > 1 ? [...to, ''] : []),
    ...comparison.measures.flatMap((compared) => measureLines(compared, comparison, ink, width)),
    ...wrap(basisOf(comparison, LEVEL), width),
    '',
  ].join('\n');
}

/** One policy by itself, the first: its measures, what its stations did, and how capable what it made was. */
export function singleText(
  compared: Comparison,
  { title, colour, width }: TerminalOptions,
  capabilities: readonly CapabilityEstimate[] = [],
  estimated: EstimatedStocks = {},
): string {
  const ink = new Chalk({ level: colour ? 1 : 0 });
  const comparison = withBoundMarked(compared);
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
  const { heading, body } = tableLines(columns, width, (cell) => cell);
  const notes = measures.flatMap(({ measure, rows: all }) =>
    all
      .filter(({ policy, estimate }) => policy === baseline && estimate.runs < alone.seeds)
      .map(({ estimate }) => `${measure.name}: ${estimate.runs} of ${alone.seeds} runs gave a value.`),
  );
  return [
    ...titleLines(title, ink, width),
    ink.bold(cut(`policy ${printable(baseline)}`, width)),
    ...heading.map((line) => ink.dim(line)),
    ...body,
    ...notes.flatMap((note) => wrap(note, width)),
    '',
    ...stateLines(comparison, baseline, ink, width),
    ...crewLines(comparison, baseline, ink, width),
    ...stockLines(comparison, baseline, estimated, ink, width),
    ...capabilityLines(capabilities, ink, width),
    ...wrap(basisOf(alone, LEVEL), width),
    '',
  ].join('\n');
}
