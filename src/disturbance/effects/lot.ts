import type { Order } from '../../line/supply/order.ts';
import { Rare } from '../../line/supply/rare.ts';
import type { Disturbing } from '../../scenario/disturbances.ts';
import type { Effect, Making } from '../effect.ts';

/**
 * Spoils the deliveries that come while it lasts: all pieces of such a lot are larger, or more of them unsound. Which
 * pieces are is drawn for each lot by its number, so that lot number k is the same whenever it comes.
 */
export function lot(spec: Disturbing<'lot'>, { line, course, draw }: Making): Effect {
  const stock = line.stocks.get(spec.stock)!;
  const by = spec.by === undefined ? null : draw('by', spec.by);
  const unsound = spec.unsound === undefined ? null : draw('unsound', spec.unsound);
  let now: { readonly by: number; readonly unsound: number } | null = null;
  const rarely = (chance: number, pieces: number, purpose: string, { number }: Order) => {
    const stream = line.streams.of(`disturbance/${spec.name}/${purpose}/${number}`);
    return chance > 0 ? new Rare(chance, stream).among(pieces) : 0;
  };
  const spoil = (order: Order) => {
    if (now === null || (spec.supplier !== undefined && order.supplier.name !== spec.supplier)) return;
    const level = course.level(line.calendar.now);
    if (now.by !== 0) stock.shiftLot(spec.feature!, order.number, now.by * level);
    const more = rarely(now.unsound * level, order.brought - order.unsound, 'unsound piece', order);
    order.unsound += more;
    order.found += rarely(order.supplier.finds, more, 'found', order);
  };
  const orders = stock.orders!;
  orders.spoilers = [...(orders.spoilers ?? []), spoil];
  return {
    begin: () => {
      now = { by: by === null ? 0 : by(), unsound: unsound === null ? 0 : unsound() };
    },
    end: () => {
      now = null;
    },
  };
}
