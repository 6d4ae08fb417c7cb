import type { Path } from '../problem.ts';
import type { SpecOf } from '../stations.ts';
import { anyWays } from './check-flow.ts';
import type { Checker } from './checker.ts';

type Rework = SpecOf<'rework'>;

/** What a rework station corrects, and whether anything off limits is within its reach. */
export function checkRework(check: Checker, station: Rework, path: Path): void {
  for (const { name, most, only } of station.corrects) {
    const at = [...path, 'corrects', name];
    check.known(at, name, check.names.features, 'feature');
    const feature = check.feature(name);
    if (most === undefined || !feature?.limits) continue;
    const { aim, limits } = feature;
    const within = Math.min(
      only === 'down' ? Number.POSITIVE_INFINITY : aim - limits.lower,
      only === 'up' ? Number.POSITIVE_INFINITY : limits.upper - aim,
    );
    if (most <= within)
      check.say(
        [...at, 'most'],
        `"${name}" is within its limits up to a deviation of ${Number(within.toPrecision(9))} mm, so nothing that is outside could ever be brought in; give more than that`,
      );
  }
}

/** The stations, other than rework stations, from which parts may come to `bench` at once or by way of other rework. */
function feedersOf(check: Checker, bench: string): string[] {
  const ways = anyWays(check);
  const feeders = new Set<string>();
  const benches = new Set([bench]);
  for (const at of benches)
    for (const { name, does } of check.raw.stations) {
      if (ways(name).includes(at)) (does === 'rework' ? benches : feeders).add(name);
    }
  return [...feeders];
}

/** Whether what is corrected was made before parts come to rework. The scenario must be whole. */
export function checkCorrections(check: Checker): void {
  const { raw, ways } = check;
  for (const station of raw.stations) {
    if (station.does !== 'rework') continue;
    const feeders = feedersOf(check, station.name);
    for (const { name } of station.corrects) {
      const { madeAt } = check.feature(name)!;
      const early = feeders.find(
        (feeder) => feeder !== madeAt && !ways.lead(madeAt, feeder) && ways.lead(feeder, madeAt),
      );
      if (early !== undefined)
        check.sayOf(
          ['stations', station.name, 'corrects', name],
          name,
          `"${name}" is corrected here, but parts may come here from "${early}", and it is made only later, at "${madeAt}"`,
        );
    }
  }
}
