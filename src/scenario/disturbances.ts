import type { z } from 'zod';
import { conveyor } from './disturbances/conveyor.ts';
import { crew } from './disturbances/crew.ts';
import { demand } from './disturbances/demand.ts';
import { feature } from './disturbances/feature.ts';
import { gauge } from './disturbances/gauge.ts';
import { health } from './disturbances/health.ts';
import { lot } from './disturbances/lot.ts';
import { marks } from './disturbances/marks.ts';
import { reader } from './disturbances/reader.ts';
import { setting } from './disturbances/setting.ts';
import { speed } from './disturbances/speed.ts';
import { station } from './disturbances/station.ts';
import { supplier } from './disturbances/supplier.ts';
import { kinds } from './fields.ts';

const WORDS = [
  'setting', 'supplier', 'marks', 'station', 'feature', 'gauge', 'reader', 'lot', 'speed', 'health', 'crew', 'conveyor',
  'demand',
] as const; // biome-ignore format: one line reads better

/** One disturbance. */
export const disturbance = kinds('disturbs', WORDS, [
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
]);

export type DisturbanceSpec = z.output<typeof disturbance> & { readonly name: string };

/** A disturbance of one kind. */
export type Disturbing<Kind extends DisturbanceSpec['disturbs']> = Extract<
  DisturbanceSpec,
  { disturbs: Kind }
>;
