import { Upsets } from '../../line/upset.ts';
import type { Disturbing } from '../../scenario/disturbances.ts';
import type { Effect, Making } from '../effect.ts';
import { sized } from '../sized.ts';

/** Lets an attempt to read a mark succeed less often: which one does is by the part's own luck. */
export function reader(spec: Disturbing<'reader'>, making: Making): Effect {
  const { line } = making;
  const at = line.gauges.get(spec.station) ?? line.assemblies.get(spec.station)!;
  const reader = at.reader!;
  reader.upsets ??= new Upsets(line.calendar);
  return { curedAt: spec.station, ...sized('to', spec.to, 1, [reader.upsets], making) };
}
