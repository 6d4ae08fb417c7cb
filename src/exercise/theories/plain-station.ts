import type { StationSpec } from '../../scenario/stations.ts';
import { must } from './theory.ts';

/** Holds a station to one machine of full speed around whose cycles nothing is done. @throws NotOfItsKind */
export function mustBePlain(station: StationSpec): void {
  const { name, machines, speed, handling, setUps, maintenance, warmUp, calendar } = station;
  must(machines === 1 && speed === 1, `"${name}" is to be one machine at full speed`);
  const busy = handling !== undefined || warmUp !== undefined || calendar !== undefined;
  must(!busy, `"${name}" is to need nobody, no warm-up and no shifts`);
  must(setUps.length === 0 && maintenance.length === 0, `"${name}" is to have no set-ups and no maintenance`);
}
