import { FATES } from '../../line/fate.ts';
import type { Disturbing } from '../../scenario/disturbances.ts';
import type { Effect, Making } from '../effect.ts';

/** Stops a station. */
export function station(spec: Disturbing<'station'>, { line }: Making): Effect {
  const at = line.stations.get(spec.station)!;
  return { begin: () => at.stop(FATES[spec.cycle]), end: () => at.resume() };
}
