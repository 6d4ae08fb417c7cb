/** What was counted on the line between the end of the warm-up and the end of the run. */
interface Counts {
  /** Length of that window, s. */
  readonly window: number;
  /** Parts that got into the line. */
  readonly started: number;
  readonly good: number;
  readonly scrapped: number;
  /** Parts sent to a rework station for the first time. */
  readonly reworked: number;
  readonly firstAttempts: number;
  readonly firstFits: number;
  /** Integral of the number of parts in the line over the window, part-seconds. */
  readonly partSeconds: number;
  /** Sum over good parts leaving in the window of the time since they were started, s. */
  readonly leadSeconds: number;
  /** Orders that fell due, and how many of them had been served by then. */
  readonly ordersDue: number;
  readonly ordersOnTime: number;
  /** Orders that came, and how many of them finished goods served in full at once. */
  readonly ordersCame: number;
  readonly ordersAtOnce: number;
  /** What the stocks cost, money; undefined where none names a price. */
  readonly stockCost: number | undefined;
  /** Arrivals that found no room, and what they are a share of; undefined where every arrival waits. */
  readonly turnedAway: number;
  readonly came: number | undefined;
  /** Integral of the finished goods on hand, piece-seconds; undefined without demand. */
  readonly finishedGoodsSeconds: number | undefined;
}

/** One measure: its key is the same in code, JSON and CSV and ends in its unit where it has one. */
export interface Measure {
  readonly key: string;
  readonly name: string;
  /** Unit it is shown in, and the factor from the keyed unit to it. */
  readonly shown: { readonly unit: string; readonly factor: number };
  readonly better: 'higher' | 'lower';
  /** The largest value it can have, if there is one; none is negative. */
  readonly most?: number;
  readonly meaning: string;
  /** Undefined where the run gives no value, such as a fit rate without assembly. */
  readonly of: (counts: Counts) => number | undefined;
  /** Of a ratio what is above and below its line, which add up over runs; undefined where the line has no such thing. */
  readonly totals?: (counts: Counts) => Totals | undefined;
}

/** What is above and below the line of a ratio. */
export type Totals = readonly [above: number, below: number];

function over(part: number, whole: number): number | undefined {
  return whole > 0 ? part / whole : undefined;
}

/** A measure that is one count over another. */
function ratio(above: keyof Counts, below: keyof Counts) {
  const totals = (counts: Counts): Totals | undefined => {
    const [part, whole] = [counts[above], counts[below]];
    return part === undefined || whole === undefined ? undefined : [part, whole];
  };
  return { totals, of: (counts: Counts) => over(...(totals(counts) ?? [0, 0])) };
}

/** The measures, each defined here and nowhere else. */
export const MEASURES = [
  {
    key: 'throughput_per_h',
    name: 'throughput',
    shown: { unit: 'good /h', factor: 1 },
    better: 'higher',
    meaning: 'good assemblies leaving the line, per hour',
    of: ({ good, window }) => (good / window) * 3600,
  },
  {
    key: 'scrap_rate',
    name: 'scrap rate',
    shown: { unit: '%', factor: 100 },
    better: 'lower',
    // ISO 22400-2:2014, scrap ratio SQ/PQ, taken over parts started.
    meaning: 'parts scrapped / parts started',
    ...ratio('scrapped', 'started'),
  },
  {
    key: 'fit_rate',
    name: 'fit rate',
    most: 1,
    shown: { unit: '%', factor: 100 },
    better: 'higher',
    meaning: 'parts that fit at their first attempt / first attempts at assembly',
    ...ratio('firstFits', 'firstAttempts'),
  },
  {
    key: 'rework_rate',
    name: 'rework rate',
    shown: { unit: '%', factor: 100 },
    better: 'lower',
    // ISO 22400-2:2014, rework ratio RQ/PQ, taken over parts started.
    meaning: 'parts sent to rework at least once / parts started',
    ...ratio('reworked', 'started'),
  },
  {
    key: 'work_in_progress_parts',
    name: 'work in progress',
    shown: { unit: 'parts', factor: 1 },
    better: 'lower',
    meaning: 'mean number of parts in the line, from the loading of their sheet on',
    of: ({ partSeconds, window }) => partSeconds / window,
  },
  {
    key: 'lead_time_s',
    name: 'lead time',
    shown: { unit: 'min', factor: 1 / 60 },
    better: 'lower',
    meaning: 'mean time from the loading of its sheet to leaving as good',
    ...ratio('leadSeconds', 'good'),
  },
  {
    key: 'turned_away_rate',
    name: 'turned away',
    most: 1,
    shown: { unit: '%', factor: 100 },
    better: 'lower',
    meaning: 'arrivals that found no room / parts that arrived or were started from stock',
    ...ratio('turnedAway', 'came'),
  },
  {
    key: 'on_time_rate',
    name: 'orders on time',
    most: 1,
    shown: { unit: '%', factor: 100 },
    better: 'higher',
    meaning: 'orders served in full by the time they were due / orders that fell due',
    ...ratio('ordersOnTime', 'ordersDue'),
  },
  {
    key: 'finished_goods_parts',
    name: 'finished goods',
    shown: { unit: 'parts', factor: 1 },
    better: 'lower',
    meaning: 'mean number of good assemblies on hand for orders',
    of: ({ finishedGoodsSeconds, window }) =>
      over(finishedGoodsSeconds ?? 0, finishedGoodsSeconds === undefined ? 0 : window),
  },
  {
    key: 'order_fill_rate',
    name: 'orders filled at once',
    most: 1,
    shown: { unit: '%', factor: 100 },
    better: 'higher',
    meaning: 'orders served in full from finished goods when they came / orders that came',
    ...ratio('ordersAtOnce', 'ordersCame'),
  },
  {
    key: 'stock_cost_per_good',
    name: 'stock cost per good',
    shown: { unit: 'money', factor: 1 },
    better: 'lower',
    meaning:
      'purchase, ordering, holding, expediting and shortage of the stocks that name a price / good assemblies',
    ...ratio('stockCost', 'good'),
  },
] as const satisfies readonly Measure[];

export type MeasureKey = (typeof MEASURES)[number]['key'];

/** What each measure that is a ratio is the ratio of. */
export function totalsOf(counts: Counts): Partial<Record<MeasureKey, Totals>> {
  return Object.fromEntries(
    MEASURES.flatMap((measure: Measure) => {
      const totals = measure.totals?.(counts);
      return totals ? [[measure.key, totals]] : [];
    }),
  );
}
