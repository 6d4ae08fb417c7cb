import type { DemandSpec } from '../../scenario/demand.ts';
import type { Line } from '../line.ts';
import type { Log } from './log.ts';
import { Steps } from './steps.ts';
import { tap } from './tap.ts';
import type { TracedDemand } from './trace.ts';

/**
 * Writes down orders for good assemblies, and what they were served with. The line counts finished goods alone; which of them an
 * order gets is told as if the oldest went first, those that were there at the start before all others.
 */
export function followDemand(line: Line, spec: DemandSpec | null, log: Log): TracedDemand | null {
  const { demand, tally } = line;
  if (demand === null || spec === null) return null;
  const level = new Steps(demand.stock);
  const orders: { came: number; served: number | null }[] = [];
  const handed: { part: number; order: number; at: number }[] = [];
  /** Numbers of the parts in finished goods, behind those that were there at the start. */
  const goods: number[] = [];
  let anonymous = demand.stock;
  let [served, taken, pieces] = [0, 0, demand.handedOver];
  line.good.leaving.push((row) => goods.push(log.of(row).number));
  const look = (): void => {
    const { now: at } = log;
    while (orders.length < tally.ordersCame) orders.push({ came: at, served: null });
    for (; pieces < demand.handedOver; pieces += spec.pieces) {
      orders[served++]!.served = at;
      for (let i = 0; i < spec.pieces; i++)
        if (anonymous > 0) anonymous--;
        else handed.push({ part: goods[taken++]!, order: served, at });
    }
    level.set(at, demand.stock);
  };
  tap(demand, 'accept', (inner) => (row) => {
    const done = inner(row);
    look();
    return done;
  });
  tap(demand, 'happen', (inner) => (code, order) => {
    inner(code, order);
    look();
  });
  return { level, orders, handed };
}
