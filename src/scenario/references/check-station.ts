import type { Path } from '../problem.ts';
import type { SpecOf, StationSpec } from '../stations.ts';
import { checkAssembly } from './check-assembly.ts';
import { checkBreakdowns } from './check-breakdowns.ts';
import { checkHours } from './check-calendars.ts';
import { checkCalls } from './check-calls.ts';
import type { Checker } from './checker.ts';

const RESERVED = ['good', 'scrap', 'pass'];

/** A batch waits in front of the station until it is complete, so it must have room there. */
function checkBatch(check: Checker, { batch, buffer, takes }: SpecOf<'work'>, path: Path): void {
  if (batch === 1) return;
  if (takes !== undefined) {
    check.say(
      [...path, 'batch'],
      'a batch gathers in a buffer, and a station that takes from stock has none in front',
    );
  } else if (buffer !== undefined && batch > buffer.places) {
    check.say(
      [...path, 'batch'],
      `${batch} parts never gather in a buffer of ${buffer.places}; make the batch smaller, or the buffer larger`,
    );
  }
}

/** What a station says of others. */
export function checkStation(check: Checker, station: StationSpec): void {
  const path = ['stations', station.name];
  if (RESERVED.includes(station.name))
    check.say(path, `"${station.name}" has a meaning of its own; give the station another name`);
  checkCalls(check, station);
  checkHours(check, station);
  checkBreakdowns(check, station);
  switch (station.does) {
    case 'work':
      checkBatch(check, station, path);
      if (station.takes !== undefined) {
        check.known([...path, 'takes'], station.takes, check.names.stock, 'stock');
        if (station.buffer !== undefined)
          check.say([...path, 'buffer'], 'a station that takes from stock has no buffer in front');
      } else if (station.buffer === undefined)
        check.say(
          path,
          '"buffer" is missing: places for parts waiting in front of the station, or unlimited',
        );
      break;
    case 'form':
      check.known([...path, 'takes'], station.takes, check.names.stock, 'stock');
      check.known([...path, 'makes'], station.makes, check.names.parts, 'kind of part');
      if (station.heating && station.heating.per !== 'length')
        check.say([...path, 'heating'], 'expected a time per length, such as 16 s/mm');
      if (station.heating && station.heating.value < 0)
        check.say([...path, 'heating'], 'heating time cannot be negative');
      if (
        station.heating &&
        check.stock(station.takes)?.thickness === undefined &&
        check.stock(station.takes)
      ) {
        check.say(
          [...path, 'heating'],
          `heating goes by thickness, but the stock "${station.takes}" has none`,
        );
      }
      break;
    case 'gauge':
      for (const { name } of station.measures)
        check.known([...path, 'measures', name], name, check.names.features, 'feature');
      check.reject([...path, 'off-limits'], station.offLimits, ['pass', 'scrap']);
      break;
    case 'assemble':
      checkAssembly(check, station, path);
      break;
    case 'rework':
      for (const { name } of station.corrects)
        check.known([...path, 'corrects', name], name, check.names.features, 'feature');
      break;
  }
}
