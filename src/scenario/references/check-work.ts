import type { Path } from '../problem.ts';
import type { SpecOf } from '../stations.ts';
import type { Checker } from './checker.ts';

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

/** What a plain operation takes. */
export function checkWork(check: Checker, station: SpecOf<'work'>, path: Path): void {
  checkBatch(check, station, path);
  if (station.takes !== undefined) {
    check.known([...path, 'takes'], station.takes, check.names.stock, 'stock');
    if (station.buffer !== undefined)
      check.say([...path, 'buffer'], 'a station that takes from stock has no buffer in front');
  } else if (station.buffer === undefined)
    check.say(path, '"buffer" is missing: places for parts waiting in front of the station, or unlimited');
}
