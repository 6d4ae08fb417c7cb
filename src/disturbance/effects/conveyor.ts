import type { Conveyor } from '../../line/conveyor.ts';
import type { Disturbing } from '../../scenario/disturbances.ts';
import type { Effect, Making } from '../effect.ts';
import { sized } from '../sized.ts';

/** Slows a belt, or stops it, with all parts on it. */
export function conveyor(spec: Disturbing<'conveyor'>, making: Making): Effect {
  const belt = making.line.stations.get(spec.station)!.inbox as Conveyor;
  const upsets = belt.unsettle();
  return {
    ...sized('to', spec.to, 1, [upsets], making),
    changed: (at) => belt.move(upsets.factor(at)),
  };
}
