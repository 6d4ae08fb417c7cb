import type { Path } from '../problem.ts';
import type { SpecOf } from '../stations.ts';
import type { Checker } from './checker.ts';

/** The sheet and the part of a forming station, and its heating. */
export function checkForming(check: Checker, station: SpecOf<'form'>, path: Path): void {
  check.known([...path, 'takes'], station.takes, check.names.stock, 'stock');
  check.known([...path, 'makes'], station.makes, check.names.parts, 'kind of part');
  if (station.heating && station.heating.per !== 'length')
    check.say([...path, 'heating'], 'expected a time per length, such as 16 s/mm');
  if (station.heating && station.heating.value < 0)
    check.say([...path, 'heating'], 'heating time cannot be negative');
  if (station.heating && check.stock(station.takes)?.thickness === undefined && check.stock(station.takes)) {
    check.say([...path, 'heating'], `heating goes by thickness, but the stock "${station.takes}" has none`);
  }
}
