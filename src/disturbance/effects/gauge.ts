import type { Disturbing } from '../../scenario/disturbances.ts';
import { both, type Effect, type Making } from '../effect.ts';
import { sized } from '../sized.ts';

/** Shifts what a gauge reads, or scales the deviates of its repeatability. */
export function gauge(spec: Disturbing<'gauge'>, making: Making): Effect {
  const upset = making.line.gauges.get(spec.station)!.unsettle(spec.feature);
  const bias = sized(
    'bias',
    spec.bias,
    0,
    upset.map((reading) => reading.bias),
    making,
  );
  const spread = sized(
    'spread',
    spec.spread,
    1,
    upset.map((reading) => reading.spread),
    making,
  );
  return { curedAt: spec.station, ...both(bias, spread) };
}
