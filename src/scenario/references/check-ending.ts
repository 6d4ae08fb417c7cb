import type { Path } from '../problem.ts';
import type { ResponseOf } from '../responses.ts';
import { sparesOf } from '../spares.ts';
import { originalsOf } from '../stand-ins.ts';
import { takenBy } from '../stations.ts';
import type { StockSpec } from '../stocks.ts';
import type { Checker } from './checker.ts';

/** More pieces than this are never on hand, once no more than this are; undefined where it is never ordered. */
function mostOf({ order, upTo, reorderAt, leastOrder = 1, lotsOf = 1 }: StockSpec): number | undefined {
  if (order === undefined && upTo === undefined) return undefined;
  const orderAt = reorderAt ?? upTo! - 1;
  const wanted = order === undefined ? orderAt + leastOrder : orderAt + Math.max(order, leastOrder);
  return Math.max(wanted, upTo ?? 0) + lotsOf - 1;
}

/** Whether the station is the only one that takes the stock, for itself or for a repair. */
function takesAlone(check: Checker, station: string, stock: string): boolean {
  const takenAs = originalsOf(stock, check.raw.stock);
  const takers = check.raw.stations.filter(
    (it) => takenBy(it).some((name) => takenAs.includes(name)) || sparesOf(it).includes(stock),
  );
  return takers.length === 1 && takers[0]!.name === station && takenBy(takers[0]!).length > 0;
}

/** A station that is held while a stock is low, and for no other time. */
interface WhileLow {
  readonly station: string;
  readonly when: { readonly stock: string; readonly below: number; readonly until: number };
}

/** The same, if a hold is for such a time. */
export function whileLow({ station, when, until, lasts }: ResponseOf<'hold'>): WhileLow | undefined {
  if (until !== undefined || lasts !== undefined || !('stock' in when && 'below' in when)) return undefined;
  return { station, when };
}

/**
 * Whether a station that is held while a stock is low is ever released. Other responses may well be in force for good.
 * @param stock as the policy keeps it
 */
export function checkEnding(check: Checker, it: WhileLow, stock: StockSpec, path: Path): void {
  const { below, until } = it.when;
  const most = mostOf(stock);
  // What is put on hand from a reserve may end it at any level.
  if (most === undefined || (stock.reserve ?? 0) > 0) return;
  if (until > most)
    return check.say(
      [...path, 'when'],
      `"${stock.name}" is ordered up to ${most} at most, so that it never has ${until} again and "${it.station}" would be held for good; lower "below" and "until", or order more`,
    );
  const whole = check.stations.size === check.names.stations.length;
  const orderAt = stock.reorderAt ?? stock.upTo! - 1;
  if (!whole || stock.shelfLife || orderAt >= below - 1) return;
  if (takesAlone(check, it.station, stock.name))
    check.say(
      [...path, 'when'],
      `"${it.station}" alone takes "${stock.name}": held with ${below - 1} on hand, it would never bring it down to ${orderAt}, where it is ordered; let "below" be ${orderAt + 1} at most, or reorder at ${below - 1}`,
    );
}
