import type { Outcome } from '../../../src/line/outcome.ts';
import type { StockMeasures } from '../../../src/line/supply/stock-measures.ts';
import { baseStockFill, erlangLoss, poissonLotFill } from '../../../src/statistics/inventory.ts';
import { poissonExcess } from '../../../src/statistics/poisson.ts';
import { type Case, caseOf } from './case.ts';
import { exponential, gamma, type Keys, s, scenarioText } from './scenario-text.ts';
import { outcome } from './see.ts';

// The formulas hold the published values to their printed digits in tests/statistics/inventory.test.ts.

interface Demand {
  /** Time from one piece that is wanted to the next. */
  readonly every: unknown;
  /** Whether who finds none goes without, or waits. */
  readonly lost: boolean;
}

/** One a second, at random. */
const POISSON = exponential(1);

/**
 * Demand for a bought-in mate: parts arrive and meet an assembly that takes no time. Who finds no mate is scrapped, so
 * that the scrap rate is the share of lost demand, or waits in front of it and is owed one.
 */
const stockText = (mate: Keys, { every, lost }: Demand) =>
  scenarioText(2000, {
    stock: { mate: { ...(!lost && { 'when-short': 'backorders' }), ...mate } },
    stations: {
      demand: { does: 'arrive', every, to: 'serving' },
      serving: {
        ...{ does: 'assemble', buffer: 'unlimited', takes: ['mate'], cycle: s(0), fits: [], misfit: 'scrap' },
        ...(lost && { 'without-mates': 'scrap' }),
        to: 'good',
      },
    },
  });

const WAITS = { every: POISSON, lost: false };
const LOST = { every: POISSON, lost: true };
const OWED = '"when-short: backorders"';
const lostShare = ({ measures }: Outcome): number => measures.scrap_rate!;
const of =
  (key: keyof StockMeasures) =>
  ({ stocks }: Outcome): number =>
    stocks.mate![key]!;

const waiting = (expected: number) => ({
  // A rare thing: few wait, and those together.
  ...{ quantity: 'mean waiting', unit: 'pieces', expected, sharp: 0.08 },
  of: of('mean_waiting_pieces'),
});

/** I02. */
const baseStock = (level: number): Case =>
  caseOf<Outcome>({
    id: `I02 ${level}`,
    what: `a base stock of ${level} for a Poisson demand of 10 in a lead time`,
    source: 'W. J. Hopp and M. L. Spearman, Factory Physics, chapter 2',
    option: OWED,
    length: 100_000,
    scenario: stockText({ 'on-hand': level, 'up-to': level, 'lead-time': s(10) }, WAITS),
    see: outcome,
    values: [
      { quantity: 'fill rate', expected: baseStockFill(level, 10), of: of('fill_rate') },
      { quantity: 'mean on order', unit: 'pieces', expected: 10, of: of('mean_on_order_pieces') },
      waiting(poissonExcess(level, 10)),
    ],
  });

/** I04. */
const oneForOne = (load: number, base: number, law: string, leadTime: unknown): Case =>
  caseOf<Outcome>({
    id: `I04 ${load}/${base} ${law}`,
    what: `lost sales under one for one ordering, ${base} pieces, load ${load}, ${law} lead time`,
    source: 'A. K. Erlang (1917); for stock W. Karush (1957), S. A. Smith (1977)',
    option: '"without-mates: scrap"',
    length: 100_000,
    scenario: stockText({ 'on-hand': base, 'up-to': base, 'lead-time': leadTime }, LOST),
    see: outcome,
    values: [
      {
        ...{ quantity: 'share lost', expected: erlangLoss(load, base), sharp: base > load ? 0.03 : 0.01 },
        of: lostShare,
      },
      { quantity: 'fill rate', expected: 1 - erlangLoss(load, base), of: of('fill_rate') },
    ],
  });

/**
 * I06: demand of one a second without spread makes the demand over a lead time as normal as the lead time. Piece number
 * r + j after an order at r is late when the order takes longer than r + j seconds; so with steps of one piece the
 * formula's reorder point is r + 1/2 for the pieces, and r + 1 for the cycles. A normal time must lie well above zero:
 * lead time and reorder point are moved by the same amount. Orders cross once in 400, too seldom to be seen here.
 */
function normalLeadTime(
  id: string,
  reorderAt: number,
  /** The formula's reorder point, and how much of a piece it lies above ours. */
  { wanted, above }: { readonly wanted: number; readonly above: number },
  value: { readonly quantity: string; readonly of: (of: Outcome) => number },
): Case {
  const moved = reorderAt + above - wanted;
  return caseOf<Outcome>({
    id,
    what: `orders of 100 at ${wanted}, normal demand of mean 100 and standard deviation 25 in a lead time`,
    source: 'S. Nahmias, Production and Operations Analysis, chapter 5',
    option: OWED,
    length: 200_000,
    scenario: stockText(
      {
        ...{ 'on-hand': reorderAt + 100, 'reorder-at': reorderAt, order: 100 },
        'lead-time': { distribution: 'normal', mean: s(100 + moved), sd: s(25) },
      },
      { every: s(1), lost: false },
    ),
    see: outcome,
    values: [{ ...value, expected: 0.98, sharp: 0.003 }],
  });
}

/** I07. */
const lots = (reorderAt: number): Case =>
  caseOf<Outcome>({
    id: `I07 r=${reorderAt}`,
    what: `orders of 4 at ${reorderAt}, a Poisson demand of 1.726 in a lead time`,
    source: 'G. Hadley and T. M. Whitin, Analysis of Inventory Systems (1963); Factory Physics, chapter 2',
    option: OWED,
    length: 100_000,
    scenario: stockText(
      { 'on-hand': reorderAt + 4, 'reorder-at': reorderAt, order: 4, 'lead-time': s(1.726) },
      WAITS,
    ),
    see: outcome,
    values: [
      { quantity: 'fill rate', expected: poissonLotFill(reorderAt, 4, 1.726), of: of('fill_rate') },
      { quantity: 'mean on order', unit: 'pieces', expected: 1.726, of: of('mean_on_order_pieces') },
      // The position is as often at each of the levels above the reorder point.
      waiting([1, 2, 3, 4].reduce((sum, i) => sum + poissonExcess(reorderAt + i, 1.726) / 4, 0)),
    ],
  });

/** I08: the unit of time is 10 s, so that 10 a unit are one a second, and a delivery takes 5 s in the mean. */
const lostLots = caseOf<Outcome>({
  id: 'I08',
  what: 'orders of 12 at 4, lost sales, one order out at a time, exponential lead time',
  source:
    'G. Hadley and T. M. Whitin, Analysis of Inventory Systems (1963); Markov chain solved for the values',
  option: '"without-mates: scrap", "one-order-at-a-time: yes"',
  length: 100_000,
  scenario: stockText(
    {
      ...{ 'on-hand': 16, 'reorder-at': 4, order: 12, 'lead-time': exponential(5) },
      'one-order-at-a-time': 'yes',
    },
    LOST,
  ),
  see: outcome,
  values: [
    { quantity: 'share of time out of stock', expected: 0.167318, of: of('out_share') },
    { quantity: 'fill rate', expected: 0.832682, of: of('fill_rate') },
    { quantity: 'share lost', expected: 0.167318, of: lostShare },
    { quantity: 'mean on hand', unit: 'pieces', expected: 6.58757, of: of('mean_on_hand_pieces') },
  ],
});

/** What a Poisson number of mean 10 exceeds 12 by, and falls short of it by, summed term by term. */
function newsvendorPoisson() {
  let [chance, short, left] = [Math.exp(-10), 0, 0];
  for (let k = 0; k < 100; k++) {
    if (k > 12) short += (k - 12) * chance;
    else left += (12 - k) * chance;
    chance *= 10 / (k + 1);
  }
  return { short, left };
}

/** Length of a period, s. All demand but that of the last thousandth of a second meets what is left of its stock. */
const PERIOD = 10;

/** I01 with Poisson demand, which single pieces can make: 12 pieces for each period, the rest thrown away at its end. */
const onePeriod = caseOf<Outcome>({
  id: 'I01 Poisson',
  what: 'stock for one period at a time: 12 pieces, a Poisson demand of 10 in a period',
  source: 'S. Nahmias, Production and Operations Analysis, chapter 5, with Poisson demand',
  option: '"shelf-life" of a period, "review", "without-mates: scrap"',
  length: 100_000,
  scenario: stockText(
    {
      ...{ 'on-hand': 12, 'up-to': 12, 'lead-time': s(0), review: s(PERIOD) },
      'shelf-life': s(PERIOD - 0.001),
    },
    LOST,
  ),
  see: outcome,
  values: [
    {
      ...{ quantity: 'short in a period', unit: 'pieces', expected: newsvendorPoisson().short, sharp: 0.02 },
      of: (of) => of.counts.scrapped / periods(of),
    },
    {
      ...{ quantity: 'thrown away in a period', unit: 'pieces', expected: newsvendorPoisson().left },
      of: (seen) => of('expired_pieces')(seen) / periods(seen),
    },
  ],
});

/** One order is placed in each period. */
const periods = of('orders');

/** I01, I02, I04, I06 to I08. */
export const STOCKS: readonly Case[] = [
  onePeriod,
  ...[13, 14, 15, 16].map(baseStock),
  oneForOne(1, 3, 'exponential', exponential(1)),
  oneForOne(2, 3, 'constant', s(2)),
  oneForOne(5, 5, 'exponential', exponential(5)),
  oneForOne(5, 5, 'constant', s(5)),
  oneForOne(5, 5, 'gamma', gamma(5, 4)),
  oneForOne(10, 10, 'gamma', gamma(10, 0.25)),
  oneForOne(8, 12, 'constant', s(8)),
  normalLeadTime(
    'I06 cycles',
    212,
    { wanted: 151.344, above: 1 },
    {
      quantity: 'share of cycles without shortage',
      of: of('cycle_service_level'),
    },
  ),
  normalLeadTime(
    'I06 pieces',
    186,
    { wanted: 125.531, above: 0.5 },
    { quantity: 'fill rate', of: of('fill_rate') },
  ),
  ...[2, 3, 5].map(lots),
  lostLots,
];
