import { Slowed } from '../../line/operations/wrapped.ts';
import { Upsets } from '../../line/upset.ts';
import type { Disturbing } from '../../scenario/disturbances.ts';
import type { Effect, Making } from '../effect.ts';
import { sized } from '../sized.ts';

/** Lets cycles that begin take longer, besides what a policy makes of the speed. The cycle under way stays as it is. */
export function speed(spec: Disturbing<'speed'>, making: Making): Effect {
  const upsets = new Upsets(making.line.calendar);
  for (const machine of making.line.stations.get(spec.station)!.machines)
    machine.wrap((operation) => new Slowed(operation, upsets));
  return { curedAt: spec.station, ...sized('to', spec.to, 1, [upsets], making) };
}
