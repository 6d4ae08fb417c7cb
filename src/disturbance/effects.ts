import type { DisturbanceSpec, Disturbing } from '../scenario/disturbances.ts';
import type { Effect, Making } from './effect.ts';
import { conveyor } from './effects/conveyor.ts';
import { crew } from './effects/crew.ts';
import { demand } from './effects/demand.ts';
import { feature } from './effects/feature.ts';
import { gauge } from './effects/gauge.ts';
import { health } from './effects/health.ts';
import { lot } from './effects/lot.ts';
import { marks } from './effects/marks.ts';
import { reader } from './effects/reader.ts';
import { setting } from './effects/setting.ts';
import { speed } from './effects/speed.ts';
import { station } from './effects/station.ts';
import { supplier } from './effects/supplier.ts';

const effects: {
  readonly [Kind in DisturbanceSpec['disturbs']]: (spec: Disturbing<Kind>, making: Making) => Effect;
} = {
  setting,
  supplier,
  marks,
  station,
  feature,
  gauge,
  reader,
  lot,
  speed,
  health,
  crew,
  conveyor,
  demand,
};

/** What the disturbance does to the line. */
export function effectOf(spec: DisturbanceSpec, making: Making): Effect {
  // Each disturbance meets the function of its own kind, which the type checker cannot follow.
  return effects[spec.disturbs](spec as never, making);
}
