import type { StockSpec } from '../../scenario/stocks.ts';
import { suppliersOf } from '../../scenario/supply/suppliers-of.ts';
import { StockTally } from './stock-tally.ts';

const DAY = 86_400;

/** What was counted of a stock between the end of the warm-up and the end of the run. */
interface Counted {
  readonly tally: Omit<StockTally, 'copy'>;
  /** Length of that window, s. */
  readonly window: number;
  /** What a piece on hand costs a day; undefined where the stock names no price at all. */
  readonly holding: number | undefined;
  /** What a piece costs that was not on hand when it was asked for. */
  readonly perShort: number;
}

interface StockMeasure {
  /** The same in code and JSON; ends in its unit where it has one. */
  readonly key: string;
  /** Undefined where the run gives no value. */
  readonly of: (counted: Counted) => number | undefined;
}

const over = (part: number, whole: number): number | undefined => (whole > 0 ? part / whole : undefined);
/**
 * Pieces that were not on hand when they were asked for. Those that are waited for at the end are among them, those that
 * were at the start are not. What was waited for and came another way meanwhile, from a stand-in or another machine, is not either.
 */
const shortPieces = ({ late, refused, owed }: Counted['tally']): number => Math.max(0, late + refused + owed);
const askedFor = (tally: Counted['tally']): number => tally.taken - tally.late + shortPieces(tally);
const money =
  (of: (tally: Counted['tally']) => number) =>
  ({ tally, holding }: Counted): number | undefined =>
    holding === undefined ? undefined : of(tally);

/** The measures of a limited stock, each defined here and nowhere else. */
export const STOCK_MEASURES = [
  /** Share of the time with nothing on hand. */
  { key: 'out_share', of: ({ tally, window }) => tally.outSeconds / window },
  /** Times that something had to wait for a piece, or went without one, counted once between two deliveries. */
  { key: 'stock_outs', of: ({ tally }) => tally.stockOuts },
  /**
   * Pieces that were on hand when they were asked for / pieces asked for. A piece is asked for when a station could
   * start but for it: once for each part that then waits in front of it, or once for the station where none does.
   */
  {
    key: 'fill_rate',
    of: ({ tally }) => over(tally.taken - tally.late, askedFor(tally)),
  },
  /** Mean number of pieces that something waited for and that were not on hand; of it, each piece asked for had this wait on average. */
  { key: 'mean_waiting_pieces', of: ({ tally, window }) => tally.waitedSeconds / window },
  {
    key: 'mean_wait_s',
    of: ({ tally }) => over(tally.waitedSeconds, askedFor(tally)),
  },
  /** Deliveries before which nothing had to wait or went without / deliveries. */
  {
    key: 'cycle_service_level',
    of: ({ tally: { cycles, shortCycles } }) => over(cycles - shortCycles, cycles),
  },
  { key: 'mean_on_hand_pieces', of: ({ tally, window }) => tally.onHandSeconds / window },
  /** Taken and not used yet: in hand for the next part, joined to a part that is put aside, or aside for a repair. */
  { key: 'mean_allocated_pieces', of: ({ tally, window }) => tally.heldSeconds / window },
  { key: 'mean_on_order_pieces', of: ({ tally, window }) => tally.onOrderSeconds / window },
  { key: 'orders', of: ({ tally }) => tally.orders },
  { key: 'ordered_pieces', of: ({ tally }) => tally.ordered },
  /** Put on hand. */
  { key: 'delivered_pieces', of: ({ tally }) => tally.delivered },
  /** Ordered, and never came. */
  { key: 'missing_pieces', of: ({ tally }) => tally.missing },
  /** Found unsound as they came or when their turn came. */
  { key: 'unsound_pieces', of: ({ tally }) => tally.found + tally.discovered },
  { key: 'expired_pieces', of: ({ tally }) => tally.expired },
  /** Pieces that came, sound or not, at their price. */
  { key: 'purchase_cost', of: money(({ purchase }) => purchase) },
  { key: 'ordering_cost', of: money(({ ordering }) => ordering) },
  /** Of what is on hand, and of what is held in reserve. */
  {
    key: 'holding_cost',
    of: ({ tally, holding }) =>
      holding === undefined ? undefined : (holding * (tally.onHandSeconds + tally.reserveSeconds)) / DAY,
  },
  /** What the pieces that came of orders that were sped up cost more. */
  { key: 'expedite_cost', of: money(({ expedite }) => expedite) },
  {
    key: 'shortage_cost',
    of: ({ tally, holding, perShort }) => (holding === undefined ? undefined : perShort * shortPieces(tally)),
  },
] as const satisfies readonly StockMeasure[];

type StockMeasureKey = (typeof STOCK_MEASURES)[number]['key'];

/** The measures of one stock in one run; null where the run gives no value. */
export type StockMeasures = Readonly<Record<StockMeasureKey, number | null>>;

/** The price of a day on hand, 0 where the stock names other prices alone; undefined where it names none. */
function holdingOf(spec: StockSpec): number | undefined {
  const priced = suppliersOf(spec).some(
    ({ price, perOrder }) => price !== undefined || perOrder !== undefined,
  );
  const { holding, expedite, perShort } = spec;
  return holding ?? (priced || expedite?.price !== undefined || perShort !== undefined ? 0 : undefined);
}

/** @param window s between the two tallies */
export function stockMeasures(
  spec: StockSpec,
  from: StockTally,
  to: StockTally,
  window: number,
): StockMeasures {
  const tally = new StockTally();
  for (const key of Object.keys(tally) as (keyof Omit<StockTally, 'copy'>)[])
    tally[key] = to[key] - from[key];
  // Rounding may leave less than nothing where none was on hand.
  tally.onHandSeconds = Math.max(0, tally.onHandSeconds);
  const counted = { tally, window, holding: holdingOf(spec), perShort: spec.perShort ?? 0 };
  return Object.fromEntries(STOCK_MEASURES.map(({ key, of }) => [key, of(counted) ?? null])) as StockMeasures;
}

/** All that a stock cost in a run; undefined where it names no price. */
export function stockCost(measures: StockMeasures): number | undefined {
  const costs = [
    ...[measures.purchase_cost, measures.ordering_cost, measures.holding_cost],
    ...[measures.expedite_cost, measures.shortage_cost],
  ];
  const known = costs.filter((cost) => cost !== null);
  return known.length > 0 ? known.reduce((sum, cost) => sum + cost, 0) : undefined;
}
