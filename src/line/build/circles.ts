import { reMarkOf } from '../../scenario/re-mark.ts';
import { routesOf } from '../../scenario/routes.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { StationSpec } from '../../scenario/stations.ts';

/** Where parts may go at once from each station, by any way that it or a policy can send them. */
export function waysAfter(stations: readonly StationSpec[]): ReadonlyMap<string, readonly string[]> {
  const benches = stations.filter(({ does }) => does === 'rework').map(({ name }) => name);
  return new Map(
    stations.map((spec) => {
      const rejects = spec.does === 'gauge' || spec.does === 'assemble' ? benches : [];
      const reMarked = reMarkOf(spec)?.station;
      return [spec.name, [...routesOf(spec), ...rejects, ...(reMarked === undefined ? [] : [reMarked])]];
    }),
  );
}

/** The stations that a part may come to again, by any way a station or a policy can send it: only these can wait for each other in a circle. */
export function stationsInCircles({ stations }: Scenario): ReadonlySet<string> {
  const after = waysAfter(stations);
  const comesBack = (name: string): boolean => {
    const seen = new Set(after.get(name));
    for (const reached of seen) {
      if (reached === name) return true;
      for (const next of after.get(reached) ?? []) seen.add(next);
    }
    return false;
  };
  return new Set([...after.keys()].filter(comesBack));
}
