import type { StockEstimate } from '../line/supply/stock-estimate.ts';
import type { StockMeasures } from '../line/supply/stock-measures.ts';
import { fixed, percent } from './format.ts';

interface Shown {
  readonly key: keyof StockMeasures;
  /** In two lines. */
  readonly heading: string;
  readonly as: (value: number) => string;
  /** Shown only where some stock has a value of it that is not zero. */
  readonly seldom?: true;
}

const number = (value: number): string => fixed(value, 1);
const amount = (value: number): string => fixed(value, 2);

/** Shares are in %, the others in pieces, times or money. */
const SHOWN: readonly Shown[] = [
  { key: 'out_share', heading: 'out, %\nof time', as: percent },
  { key: 'stock_outs', heading: 'times\nshort', as: number },
  { key: 'fill_rate', heading: 'filled\nat once, %', as: percent },
  { key: 'cycle_service_level', heading: 'cycles not\nshort, %', as: percent },
  { key: 'mean_waiting_pieces', heading: 'waited\nfor', as: number, seldom: true },
  { key: 'mean_on_hand_pieces', heading: 'on\nhand', as: number },
  { key: 'mean_allocated_pieces', heading: 'allo-\ncated', as: number, seldom: true },
  { key: 'mean_on_order_pieces', heading: 'on\norder', as: number },
  { key: 'orders', heading: 'orders\nplaced', as: number },
  { key: 'missing_pieces', heading: 'never\ncame', as: number, seldom: true },
  { key: 'unsound_pieces', heading: 'not\nsound', as: number, seldom: true },
  { key: 'expired_pieces', heading: 'too\nold', as: number, seldom: true },
  { key: 'purchase_cost', heading: 'purchase\ncost', as: amount, seldom: true },
  { key: 'ordering_cost', heading: 'ordering\ncost', as: amount, seldom: true },
  { key: 'holding_cost', heading: 'holding\ncost', as: amount, seldom: true },
  { key: 'expedite_cost', heading: 'expedite\ncost', as: amount, seldom: true },
  { key: 'shortage_cost', heading: 'shortage\ncost', as: amount, seldom: true },
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
  const columns = shown.map(({ key, heading, as }) => ({
    key,
    heading,
    cells: measures.map((own) => (own[key] === null ? NONE : as(own[key]))),
  }));
  const fills = Object.keys(stocks).map((name) => estimates[name]?.fill ?? null);
  if (fills.some((fill) => fill !== null)) {
    const cells = fills.map((fill) => (fill === null ? NONE : percent(fill)));
    const beside = columns.findIndex(({ key }) => key === 'fill_rate') + 1;
    columns.splice(beside, 0, { key: 'fill_rate', heading: 'by\ntheory, %', cells });
  }
  return { names: Object.keys(stocks), columns };
}
