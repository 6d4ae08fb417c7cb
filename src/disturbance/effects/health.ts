import type { Disturbing } from '../../scenario/disturbances.ts';
import { both, type Effect, type Making } from '../effect.ts';
import { sized } from '../sized.ts';

/**
 * Lets the lives of a station run faster, what is left of the present ones included, and its repairs take longer. The
 * lives drawn stay as they are: only the clock by which they run is another.
 */
export function health(spec: Disturbing<'health'>, making: Making): Effect {
  const hit = making.line.breakdowns
    .get(spec.station)!
    .filter(({ name }) => spec.breakdown === undefined || name === spec.breakdown);
  const pace = sized(
    'as-often',
    spec.asOften,
    1,
    hit.map(({ upsets }) => upsets.pace),
    making,
  );
  const repairs = sized(
    'repairs-take',
    spec.repairsTake,
    1,
    hit.map(({ upsets }) => upsets.repairs),
    making,
  );
  return {
    ...both(pace, repairs),
    changed: (at) => {
      for (const it of hit) it.worsen(it.upsets.pace.factor(at), it.upsets.repairs.factor(at));
    },
  };
}
