import type { Path } from '../problem.ts';
import type { ResponseOf } from '../responses.ts';
import type { Checker } from './checker.ts';

/** Arrivals keep their own pace. */
export function checkSlowed(check: Checker, { station }: ResponseOf<'slow'>, path: Path): void {
  check.station([...path, 'station'], station, []);
  if (check.stations.get(station)?.does === 'arrive')
    check.say(
      [...path, 'station'],
      `parts come to "${station}" by themselves, at a pace of their own; slow a station behind it`,
    );
}

/** Neither do they hurry, nor does sheet get warm or cold sooner. */
export function checkSpedUp(check: Checker, { station }: ResponseOf<'speed-up'>, path: Path): void {
  const at = [...path, 'station'];
  check.station(at, station, []);
  const spec = check.stations.get(station);
  if (spec?.does === 'arrive')
    check.say(
      at,
      `parts come to "${station}" by themselves, at a pace of their own; speed up a station behind it`,
    );
  if (spec?.does === 'form' && (spec.heating || spec.cooling))
    check.say(
      at,
      `"${station}" heats or cools the sheet for as long as it needs, which goes no faster; speed up a station behind it`,
    );
}
