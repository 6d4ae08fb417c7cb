import { reMarkOf } from '../re-mark.ts';
import type { StationSpec } from '../stations.ts';
import type { Checker } from './checker.ts';

/** Where a station sends what its reader does not read, to be marked anew. */
export function checkReader(check: Checker, station: StationSpec): void {
  const to = reMarkOf(station);
  if (to === undefined) return;
  check.station(['stations', station.name, 'reader', 'unread', 're-mark'], to.station, ['mark']);
}
