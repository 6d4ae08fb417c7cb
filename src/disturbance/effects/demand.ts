import type { Disturbing } from '../../scenario/disturbances.ts';
import type { Effect, Making } from '../effect.ts';
import { sized } from '../sized.ts';

/** Lets orders come more often, or less, the one on its way included. */
export function demand(spec: Disturbing<'demand'>, making: Making): Effect {
  const demand = making.line.demand!;
  return {
    ...sized('to', spec.to, 1, [demand.upsets], making),
    changed: (at) => demand.quicken(demand.upsets.factor(at)),
  };
}
