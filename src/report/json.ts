import type { CauseRates } from '../experiment/cause-rates.ts';
import { type Comparison, LEVEL, type MeasureComparison } from '../experiment/comparison.ts';
import type { Looked } from '../experiment/looked.ts';
import type { Narrowed } from '../experiment/narrow.ts';
import type { Judged, Verdict } from '../experiment/paired.ts';
import type { Pilot } from '../experiment/pilot.ts';
import type { Recovered } from '../experiment/recovered.ts';
import type { Spread } from '../experiment/spread.ts';
import type { EstimatedStocks } from '../experiment/stock-estimates.ts';
import type { TargetFound } from '../experiment/targets.ts';
import type { Twins } from '../experiment/twins.ts';
import { MEASURES } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import type { State } from '../line/state.ts';
import { STOCK_MEASURES, type StockMeasures } from '../line/supply/stock-measures.ts';
import { type BoundDocument, boundJson } from './bound-json.ts';
import { type CausesDocument, causesJson } from './causes-json.ts';
import { COUNT_KEYS } from './count-keys.ts';
import { type MeanDocument, meanJson } from './estimate-json.ts';
import { keyedUnit } from './keyed-unit.ts';
import { type LookedDocument, lookedJson } from './looked-json.ts';
import { type MadeFrom, type MadeFromDocument, madeFromJson } from './made-from.ts';
import { type NarrowedDocument, narrowedJson } from './narrowed-json.ts';
import { type SpreadDocument, spreadJson } from './spread-json.ts';
import { type TargetDocument, targetsJson } from './targets-json.ts';
import { type TwinsDocument, twinsJson } from './twins-json.ts';
import { type WarmUpDocument, warmUpJson } from './warm-up-json.ts';

/** Changes its number when a reader of the older form would go wrong. */
export const FORMAT = 'mendline comparison 2';

/** A comparison as data. Every number is in the unit that its key names, unrounded; null is no value. */
export interface ComparisonDocument
  extends MadeFromDocument<typeof FORMAT>,
    Partial<CausesDocument & LookedDocument> {
  /** Every policy was run under each of these. */
  readonly seeds: readonly number[];
  /** Coverage of each mean's interval by itself, and of all the differences' intervals together. */
  readonly level: number;
  /** Number of differences to the baseline that hold together. */
  readonly comparisons: number;
  /** Number of differences of all pairs that hold together. */
  readonly pair_comparisons: number;
  /** The policy that the others are compared with. */
  readonly baseline: string;
  readonly policies: readonly string[];
  /** Without those that no run of any policy gives a value for. */
  readonly measures: readonly MeasureDocument[];
  /** Mean share of the counted time by policy, station and state. */
  readonly state_shares: Comparison['stateShares'];
  /** Mean share of the counted time that a crew's members were busy, by policy and crew. */
  readonly crew_busy_shares: Comparison['crewShares'];
  /** Mean over the runs that give a value, for each policy and limited stock. */
  readonly stocks: readonly PolicyStockDocument[];
  /** How the runs lie, beyond their means. */
  readonly spread?: SpreadDocument;
  /** How often each policy met what was asked for; left out where nothing was. */
  readonly targets?: readonly TargetDocument[];
  readonly runs: readonly RunDocument[];
  /** The policy that is a bound; left out where there is none. */
  readonly bound?: BoundDocument;
  /** Of the CSV files that belong to this document, by name; they say nothing of where they come from. */
  readonly csv_sha256?: Readonly<Record<string, string>>;
  /** Only where the runs stopped by the width of intervals. */
  readonly half_width?: NarrowedDocument;
  /** Left out where no pilot was run. */
  readonly warm_up?: WarmUpDocument;
  /** What the disturbances cost against undisturbed twins; only where these were run. */
  readonly twins?: TwinsDocument;
}

interface MeasureDocument {
  readonly key: string;
  readonly name: string;
  /** Unit of the numbers in `rows`; `1` is a plain ratio. */
  readonly unit: string;
  readonly better: 'higher' | 'lower';
  readonly meaning: string;
  /** What a difference must exceed to be worth having; 0 where every difference is. */
  readonly worth: number;
  readonly rows: readonly RowDocument[];
  /** Each policy beside the best of the others; empty where there are no intervals. */
  readonly best: readonly BestDocument[];
  readonly pairs: readonly PairDocument[];
}

/** What is said of a paired difference. */
interface JudgedDocument {
  /** Its mean, run by run under the same seed. */
  readonly difference: number | null;
  readonly difference_lower: number | null;
  readonly difference_upper: number | null;
  readonly difference_level: number | null;
  readonly difference_method: string | null;
  readonly verdict: Verdict | null;
  /** On which side of zero the whole interval lies. */
  readonly surely: 'better' | 'worse' | null;
  /** About how many more runs would decide it. */
  readonly more_runs: number | null;
}

interface PairDocument extends JudgedDocument {
  readonly policy: string;
  readonly other: string;
  /** Seeds under which both gave a value. */
  readonly runs: number;
  readonly chance: number | null;
}

interface BestDocument {
  readonly policy: string;
  /** To the best of the others. */
  readonly difference: number;
  readonly difference_lower: number | null;
  readonly difference_upper: number | null;
  readonly difference_level: number;
  readonly difference_method: string;
  readonly runs: number;
  readonly may_be_best: boolean;
  readonly surely_best: boolean;
}

interface RowDocument extends JudgedDocument, MeanDocument {
  readonly policy: string;
}

interface RunDocument {
  readonly policy: string;
  readonly seed: number;
  readonly measures: Readonly<Record<string, number | null>>;
  readonly counts: Readonly<Record<string, number>>;
  readonly state_shares: Readonly<Record<string, Readonly<Record<State, number>>>>;
  readonly stock_out_shares: Readonly<Record<string, number>>;
  readonly crew_busy_shares: Readonly<Record<string, number>>;
  readonly stocks: readonly StockDocument[];
  /** What the responses of the policy did; left out where nothing is counted of it. */
  readonly did?: Readonly<Record<string, number>>;
  readonly events: number;
}

export interface ComparisonSource extends MadeFrom {
  readonly comparison: Comparison;
  readonly outcomes: readonly Outcome[];
  readonly twins?: Twins | undefined;
  readonly recovered?: Recovered | undefined;
  readonly pilot?: Pilot | undefined;
  readonly spread?: Spread | undefined;
  readonly targets?: readonly TargetFound[];
  /** Where the runs stopped by the width of intervals. */
  readonly narrowed?: Narrowed | undefined;
  readonly causes?: CauseRates | undefined;
  readonly looked?: Looked | undefined;
  readonly csvSha256?: Readonly<Record<string, string>>;
  readonly estimated?: EstimatedStocks;
}

/** A limited stock under one policy, with what theory says of its fill rate before any run; null where it says nothing. */
type PolicyStockDocument = {
  readonly policy: string;
  readonly estimated_fill_rate: number | null;
} & StockDocument;

/** A limited stock in one run. */
type StockDocument = { readonly stock: string } & StockMeasures;

const stockDocuments = (stocks: Outcome['stocks']): StockDocument[] =>
  Object.entries(stocks).map(([stock, measures]) => ({
    stock,
    ...(Object.fromEntries(STOCK_MEASURES.map(({ key }) => [key, measures[key]])) as StockMeasures),
  }));

const judgedDocument = ({ difference, verdict, surely, more }: Judged): JudgedDocument => ({
  difference: difference?.value ?? null,
  difference_lower: difference?.lower ?? null,
  difference_upper: difference?.upper ?? null,
  difference_level: difference?.level ?? null,
  difference_method: difference?.method ?? null,
  verdict,
  surely,
  more_runs: more,
});

function measureDocument({ measure, worth, rows, best, pairs }: MeasureComparison): MeasureDocument {
  return {
    key: measure.key,
    name: measure.name,
    unit: keyedUnit(measure.key),
    better: measure.better,
    meaning: measure.meaning,
    worth,
    rows: rows.map(({ policy, estimate, ...judged }) => ({
      policy,
      ...meanJson(estimate),
      ...judgedDocument(judged),
    })),
    best: best.map(({ policy, difference, mayBeBest, best }) => ({
      policy,
      difference: difference.value,
      difference_lower: difference.lower,
      difference_upper: difference.upper,
      difference_level: difference.level,
      difference_method: difference.method,
      runs: difference.runs,
      may_be_best: mayBeBest,
      surely_best: best,
    })),
    pairs: pairs.map(({ policy, other, chance, ...judged }) => ({
      policy,
      other,
      runs: judged.difference?.runs ?? 0,
      ...judgedDocument(judged),
      chance,
    })),
  };
}

function runDocument(outcome: Outcome): RunDocument {
  return {
    policy: outcome.policy,
    seed: outcome.seed,
    measures: Object.fromEntries(MEASURES.map(({ key }) => [key, outcome.measures[key]])),
    counts: Object.fromEntries(COUNT_KEYS.map(([count, key]) => [key, outcome.counts[count]])),
    state_shares: outcome.stateShares,
    stock_out_shares: outcome.stockOutShares,
    crew_busy_shares: outcome.crewBusyShares,
    stocks: stockDocuments(outcome.stocks),
    ...(outcome.did && { did: outcome.did }),
    events: outcome.events,
  };
}

/** The comparison and the runs behind it as a plain object, its keys always in the same order. */
export const comparisonJson = (source: ComparisonSource): ComparisonDocument =>
  documentOf(source, source.outcomes.map(runDocument));

/** Where the runs stand in the text of a document that has none: nothing else begins a line like this. */
const NO_RUNS = '\n  "runs": []';

/** The same as it is written, run by run: that of ten thousand runs is larger than all else that the report needs. */
export function* comparisonPieces(source: ComparisonSource): Generator<string> {
  const text = JSON.stringify(documentOf(source, []), null, 2);
  const at = text.indexOf(NO_RUNS);
  yield `${text.slice(0, at)}${NO_RUNS.slice(0, -1)}`;
  for (const [i, outcome] of source.outcomes.entries()) {
    const run = JSON.stringify(runDocument(outcome), null, 2).replaceAll('\n', '\n    ');
    yield `${i > 0 ? ',' : ''}\n    ${run}`;
  }
  yield `\n  ]${text.slice(at + NO_RUNS.length)}\n`;
}

function documentOf(
  {
    comparison,
    outcomes,
    twins,
    recovered,
    pilot,
    narrowed,
    spread,
    targets = [],
    causes,
    looked,
    csvSha256,
    estimated = {},
    ...from
  }: ComparisonSource,
  runs: readonly RunDocument[],
): ComparisonDocument {
  const { baseline, bound, comparisons, pairComparisons, policies } = comparison;
  const { measures, stateShares, crewShares, stocks } = comparison;
  return {
    ...madeFromJson(FORMAT, from),
    seeds: [...new Set(outcomes.map(({ seed }) => seed))],
    level: LEVEL,
    comparisons,
    pair_comparisons: pairComparisons,
    baseline,
    policies,
    measures: measures.map(measureDocument),
    state_shares: stateShares,
    crew_busy_shares: crewShares,
    stocks: policies.flatMap((policy) =>
      stockDocuments(stocks[policy]!).map(({ stock, ...measured }) => ({
        ...{ policy, stock, estimated_fill_rate: estimated[policy]?.[stock]?.fill ?? null },
        ...measured,
      })),
    ),
    ...(spread && { spread: spreadJson(spread) }),
    ...(targets.length > 0 && { targets: targetsJson(targets) }),
    ...(causes && causesJson(causes)),
    ...(looked && lookedJson(looked)),
    runs,
    ...(bound !== null && { bound: boundJson(bound, recovered) }),
    ...(csvSha256 && { csv_sha256: csvSha256 }),
    ...(narrowed && { half_width: narrowedJson(narrowed) }),
    ...(pilot && { warm_up: warmUpJson(pilot) }),
    ...(twins && { twins: twinsJson(twins) }),
  };
}
