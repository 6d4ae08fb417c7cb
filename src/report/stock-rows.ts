import type { StockEstimate } from '../line/supply/stock-estimate.ts';
import type { StockMeasures } from '../line/supply/stock-measures.ts';
import { fixed, percent } from './format.ts';

interface Shown {
  readonly key: keyof StockMeasures;
  /** In two lines. */
  readonly heading: string;
  /** Without a full stop. */
  readonly meaning: string;
  readonly as: (value: number) => string;
  /** Shown only where some stock has a value of it that is not zero. */
  readonly seldom?: true;
}

const number = (value: number): string => fixed(value, 1);
const amount = (value: number): string => fixed(value, 2);

/** Shares are in %, the others in pieces, times or money. */
const SHOWN: readonly Shown[] = [
  {
    key: 'out_share',
    heading: 'out, %\nof time',
    meaning: 'share of the time with no piece on hand',
    as: percent,
  },
  {
    key: 'stock_outs',
    heading: 'times\nshort',
    meaning:
      'times that something had to wait for a piece or went without, counted once between two deliveries',
    as: number,
  },
  {
    key: 'fill_rate',
    heading: 'filled\nat once, %',
    meaning:
      'pieces on hand when asked for / pieces asked for. A part asks when it could start but for the piece, so few ask where a line that is short soon blocks: read it beside the time out',
    as: percent,
  },
  {
    key: 'cycle_service_level',
    heading: 'cycles not\nshort, %',
    meaning: 'deliveries before which nothing had to wait or went without / deliveries',
    as: percent,
  },
  {
    key: 'mean_waiting_pieces',
    heading: 'waited\nfor',
    meaning: 'mean number of pieces that were wanted and not on hand',
    as: number,
    seldom: true,
  },
  { key: 'mean_on_hand_pieces', heading: 'on\nhand', meaning: 'mean number of pieces on hand', as: number },
  {
    key: 'mean_allocated_pieces',
    heading: 'allo-\ncated',
    meaning: 'mean number of pieces taken and not used yet',
    as: number,
    seldom: true,
  },
  {
    key: 'mean_on_order_pieces',
    heading: 'on\norder',
    meaning: 'mean number of pieces ordered and not delivered yet',
    as: number,
  },
  { key: 'orders', heading: 'orders\nplaced', meaning: 'orders placed', as: number },
  {
    key: 'missing_pieces',
    heading: 'never\ncame',
    meaning: 'pieces ordered that never came',
    as: number,
    seldom: true,
  },
  {
    key: 'unsound_pieces',
    heading: 'not\nsound',
    meaning: 'pieces found unsound as they came or when their turn came',
    as: number,
    seldom: true,
  },
  {
    key: 'expired_pieces',
    heading: 'too\nold',
    meaning: 'pieces that became too old',
    as: number,
    seldom: true,
  },
  {
    key: 'purchase_cost',
    heading: 'purchase\ncost',
    meaning: 'of the pieces that came',
    as: amount,
    seldom: true,
  },
  { key: 'ordering_cost', heading: 'ordering\ncost', meaning: 'of placing orders', as: amount, seldom: true },
  {
    key: 'holding_cost',
    heading: 'holding\ncost',
    meaning: 'of keeping pieces on hand and in reserve',
    as: amount,
    seldom: true,
  },
  {
    key: 'expedite_cost',
    heading: 'expedite\ncost',
    meaning: 'what orders that were sped up cost more',
    as: amount,
    seldom: true,
  },
  {
    key: 'shortage_cost',
    heading: 'shortage\ncost',
    meaning: 'of pieces that were short',
    as: amount,
    seldom: true,
  },
];

/** Where there is no value. */
const NONE = '\u2013';

/**
 * The measures of stocks as cells, a row for each, and beside the fill rate what theory says of it where it says anything
 * of any.
 */
export function stockRows(
  stocks: Readonly<Record<string, StockMeasures>>,
  estimates: Readonly<Record<string, StockEstimate>> = {},
) {
  const measures = Object.values(stocks);
  const shown = SHOWN.filter(({ key, seldom }) => !seldom || measures.some((own) => (own[key] ?? 0) !== 0));
  const columns = shown.map(({ key, heading, meaning, as }) => ({
    ...{ key, heading, meaning },
    cells: measures.map((own) => (own[key] === null ? NONE : as(own[key]))),
  }));
  const fills = Object.keys(stocks).map((name) => estimates[name]?.fill ?? null);
  if (fills.some((fill) => fill !== null)) {
    const cells = fills.map((fill) => (fill === null ? NONE : percent(fill)));
    const beside = columns.findIndex(({ key }) => key === 'fill_rate') + 1;
    const meaning =
      'what a formula expects to be filled at once, before any run, if pieces are wanted at random at the pace of the ideal line';
    columns.splice(beside, 0, { ...{ key: 'fill_rate', heading: 'by\ntheory, %', meaning }, cells });
  }
  return { names: Object.keys(stocks), columns };
}
