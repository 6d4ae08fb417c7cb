import { routesOf } from '../scenario/routes.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { ReaderSpec } from '../scenario/stations/reader.ts';
import type { SpecOf } from '../scenario/stations.ts';
import { gradeSharesOf } from './grade-shares.ts';

/** What to expect of a reader that meets a part for the first time. */
interface Readings {
  /** The chance that the mark is read within the tries. */
  readonly read: number;
  /** Mean number of attempts. */
  readonly tries: number;
}

/** The stations that mark parts on their way, not those that only mark anew what was not read. */
export function markersOf({ stations }: Scenario): SpecOf<'mark'>[] {
  const fed = new Set(stations.flatMap(routesOf));
  return stations.flatMap((spec) => (spec.does === 'mark' && fed.has(spec.name) ? [spec] : []));
}

/**
 * What to expect of a reader of marks made at these stations, each making as many; without one every part counts as
 * marked, grade A. Attempts are independent, so their number is geometric, cut off at the tries.
 */
export function readShare(markers: readonly SpecOf<'mark'>[], { chances, tries }: ReaderSpec): Readings {
  let read = 0;
  let made = 0;
  const count = (share: number, chance: number) => {
    const found = 1 - (1 - chance) ** tries;
    read += share * found;
    made += share * (chance > 0 ? found / chance : tries);
  };
  if (markers.length === 0) count(1, chances[0]!);
  for (const marker of markers) {
    count((1 - marker.takesHold) / markers.length, 0);
    for (const [i, share] of gradeSharesOf(marker).entries())
      count((share * marker.takesHold) / markers.length, chances[i]!);
  }
  return { read, tries: made };
}
