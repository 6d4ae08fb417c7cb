import type { StationSpec } from '../../../scenario/stations.ts';
import { VisitTime } from '../../visit-time.ts';
import type { Plan } from '../plan.ts';

/** The times of visits to a station. */
export function timeOf(spec: StationSpec, { line }: Plan): VisitTime {
  return new VisitTime(spec.name, spec.cycle, line.parts, line.streams);
}
