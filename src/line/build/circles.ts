import { reMarkOf } from '../../scenario/re-mark.ts';
import { reroutesIn } from '../../scenario/reroutes.ts';
import { routesOf } from '../../scenario/routes.ts';
import type { Scenario } from '../../scenario/scenario.ts';

/** Where parts may go at once from each station, by any way that it or a policy can send them. */
export function waysAfter({
  stations,
  policies,
}: Pick<Scenario, 'stations' | 'policies'>): ReadonlyMap<string, readonly string[]> {
  const benches = stations.filter(({ does }) => does === 'rework').map(({ name }) => name);
  const rerouted = reroutesIn({ policies });
  return new Map(
    stations.map((spec) => {
      const rejects = spec.does === 'gauge' || spec.does === 'assemble' ? benches : [];
      const turned = rerouted.flatMap(([at, to]) => (at === spec.name ? [to] : []));
      const reMarked = reMarkOf(spec)?.station;
      return [
        spec.name,
        [...routesOf(spec), ...turned, ...rejects, ...(reMarked === undefined ? [] : [reMarked])],
      ];
    }),
  );
}

/** The stations that a part may come to again, by any way a station or a policy can send it: only these can wait for each other in a circle. */
export function stationsInCircles(scenario: Scenario): ReadonlySet<string> {
  const after = waysAfter(scenario);
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
