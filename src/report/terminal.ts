import { Chalk, type ChalkInstance } from 'chalk';
import type { CapabilityEstimate } from '../experiment/capabilities.ts';
import { type Comparison, LEVEL, type MeasureComparison } from '../experiment/comparison.ts';
import type { Recovered } from '../experiment/recovered.ts';
import type { Spread } from '../experiment/spread.ts';
import type { EstimatedStocks } from '../experiment/stock-estimates.ts';
import type { TargetFound } from '../experiment/targets.ts';
import type { Twins } from '../experiment/twins.ts';
import { STATES, type State } from '../line/state.ts';
import { basisOf } from './basis.ts';
import {
  withBoundMarked,
  withBoundMarkedInRows,
  withBoundMarkedInSpread,
  withBoundMarkedInTwins,
} from './bound-text.ts';
import { capabilityRows } from './capability-text.ts';
import { cellsOf, headingOf, percentLevel } from './cells.ts';
import { cut, printable, wrap } from './columns.ts';
import { percent } from './format.ts';
import { besideVerdicts, noneChanged, notesOf } from './measure-notes.ts';
import { pairsLines } from './pairs-text.ts';
import { RECOVERED_HEADING, recoveredNotes, recoveredRows } from './recovered-cells.ts';
import { skewText } from './skew-text.ts';
import { spreadTable, targetTables } from './spread-terminal.ts';
import { occurring, STATE_LOOKS } from './state-words.ts';
import { stockRows } from './stock-rows.ts';
import { type Column, shareLines, tableLines } from './table-lines.ts';
import { TWINS_HEADING, twinColumns, twinNotes } from './twin-cells.ts';
import { twinStory } from './twin-story.ts';
import { verdictSentences } from './verdict.ts';
import { painted, stacked } from './verdict-word.ts';

export interface TerminalOptions {
  readonly title: string;
  readonly colour: boolean;
  /** Columns of the terminal; 80 is the least that is laid out for. */
  readonly width: number;
  /** Whether every pair is told, not only each policy against the first. */
  readonly pairs?: boolean;
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
  // Without differences there is room for the word in one line.
  const still = noneChanged(compared);
  const left: Column[] = [
    { heading: 'policy', side: 'left', cells: rows.map(({ policy }) => printable(policy)) },
    { heading: 'mean', side: 'right', cells: rows.map(({ mean }) => mean) },
    { heading: `${share} interval`, side: 'right', cells: rows.map(({ interval }) => interval) },
  ];
  const differences: Column[] = [
    { heading: 'difference', side: 'right', cells: rows.map(({ difference }) => difference) },
    {
      heading: 'its interval',
      side: 'right',
      cells: rows.map(({ differenceInterval }) => differenceInterval),
    },
  ];
  const words: Column = {
    heading: 'verdict',
    side: 'left',
    cells: rows.map(({ verdict }) => (still ? verdict : stacked(verdict))),
  };
  const shown = several ? [...left, ...(still ? [] : differences), words] : left;
  const { heading, body } = tableLines(shown, width, painted(ink));
  const notes = [...besideVerdicts(compared), ...notesOf(compared, comparison)].flatMap((note) =>
    wrap(printable(note), width),
  );
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

/** A table with what stands below it. */
function titledLines(
  { notes, ...table }: ReturnType<typeof spreadTable>,
  ink: ChalkInstance,
  width: number,
): string[] {
  const below = notes.flatMap((note) => wrap(printable(note), width));
  const lines = shareLines(table, ink, width);
  return below.length > 0 ? [...lines.slice(0, -1), ...below.map((line) => ink.dim(line)), ''] : lines;
}

/** Which intervals are doubtful; nothing where none is. */
function skewLines(spread: Spread | undefined, width: number): string[] {
  return skewText(spread?.skews ?? []).flatMap((text) => [...wrap(printable(text), width), '']);
}

/** What a comparison tells beyond means and their differences. */
interface Besides {
  readonly spread?: Spread | undefined;
  readonly targets?: readonly TargetFound[];
}

function titleLines(title: string, ink: ChalkInstance, width: number): string[] {
  return [...wrap(printable(title), width).map((line) => ink.bold(line)), ''];
}

/** The verdict, what the disturbances cost, what was recovered, then a table a measure, then what the intervals hold for. */
export function comparisonText(
  compared: Comparison,
  { title, colour, width, pairs = false }: TerminalOptions,
  twins?: Twins,
  recovered?: Recovered,
  { spread, targets = [] }: Besides = {},
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
    ...targetTables(withBoundMarkedInRows(targets, compared), comparison.policies).flatMap((table) =>
      titledLines(table, ink, width),
    ),
    ...twinLines(twins && withBoundMarkedInTwins(twins, compared), comparison, ink, width),
    ...recoveredLines(recovered, ink, width),
    ...(comparison.policies.length > 1 ? [...to, ''] : []),
    ...comparison.measures.flatMap((compared) => measureLines(compared, comparison, ink, width)),
    ...(pairs ? pairsLines(comparison, ink, width) : []),
    ...skewLines(spread && withBoundMarkedInSpread(spread, compared), width),
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
  found?: Spread,
): string {
  const spread = found && withBoundMarkedInSpread(found, compared);
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
    ...skewLines(spread, width),
    ...(spread && spread.seeds > 1 ? titledLines(spreadTable(spread, baseline), ink, width) : []),
    ...stateLines(comparison, baseline, ink, width),
    ...crewLines(comparison, baseline, ink, width),
    ...stockLines(comparison, baseline, estimated, ink, width),
    ...capabilityLines(capabilities, ink, width),
    ...wrap(basisOf(alone, LEVEL), width),
    '',
  ].join('\n');
}
