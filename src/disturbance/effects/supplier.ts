import type { Disturbing } from '../../scenario/disturbances.ts';
import type { Effect, Making } from '../effect.ts';

/** Lets nothing be delivered; what falls due meanwhile comes at the end. */
export function supplier(spec: Disturbing<'supplier'>, { line }: Making): Effect {
  const stock = line.stocks.get(spec.stock)!;
  return { begin: () => stock.cutOff(spec.supplier), end: () => stock.supply(spec.supplier) };
}
