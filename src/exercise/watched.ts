import { MEASURES } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import type { StockMeasures } from '../line/supply/stock-measures.ts';

/** Something that a class watches while it turns a knob. */
export interface Watched {
  /** As the exercise names it, and as the page does. */
  readonly name: string;
  readonly meaning: string;
  /** Unit it is shown in, and the factor from the unit of the engine to it. */
  readonly shown: { readonly unit: string; readonly factor: number };
  readonly better: 'higher' | 'lower';
  /** The largest value it can have; none is negative. */
  readonly most?: number | undefined;
  /** Null where the run gives no value. */
  readonly of: (outcome: Outcome) => number | null;
}

/** Between which numbers it can lie, as shown; a share is of a whole. */
export function shownLimits({ shown, most }: Watched): {
  readonly least: number;
  readonly most: number | null;
} {
  if (shown.unit === '%') return { least: 0, most: 100 };
  return { least: 0, most: most === undefined ? null : most * shown.factor };
}

interface OfStock extends Omit<Watched, 'of'> {
  readonly key: keyof StockMeasures;
}

const share = { unit: '%', factor: 100 };
const pieces = { unit: 'pieces', factor: 1 };

/** What may be watched of a limited stock, behind its name. */
const OF_STOCKS: readonly OfStock[] = [
  {
    ...{ key: 'fill_rate', name: 'filled at once', shown: share, better: 'higher', most: 1 },
    meaning: 'pieces that were on hand when they were asked for / pieces asked for',
  },
  {
    ...{ key: 'mean_on_hand_pieces', name: 'on hand', shown: pieces, better: 'lower' },
    meaning: 'mean number of pieces on hand',
  },
  {
    ...{ key: 'mean_waiting_pieces', name: 'waited for', shown: pieces, better: 'lower' },
    meaning: 'mean number of pieces that something waited for',
  },
];

/** Everything that runs of a line with these limited stocks can be watched for. */
export function watchable(stocks: readonly string[]): Watched[] {
  return [
    ...MEASURES.map(
      ({ key, ...measure }): Watched => ({ ...measure, of: ({ measures }) => measures[key] ?? null }),
    ),
    ...stocks.flatMap((stock) =>
      OF_STOCKS.map(
        ({ key, name, ...rest }): Watched => ({
          ...rest,
          name: `${stock} ${name}`,
          of: ({ stocks }) => stocks[stock]?.[key] ?? null,
        }),
      ),
    ),
  ];
}
