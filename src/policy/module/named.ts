import type { Scenario } from '../../scenario/scenario.ts';
import type { SpecOf } from '../../scenario/stations.ts';

/** What of a scenario a policy may name, by what can be asked of it. */
export function namedIn({ stations, stocks, parts }: Scenario) {
  const doing = <Does extends 'gauge' | 'assemble' | 'form'>(does: Does) =>
    stations.filter((it): it is SpecOf<Does> & { readonly name: string } => it.does === does);
  const gauges = doing('gauge');
  const assemblies = doing('assemble');
  return {
    stations,
    /** Arrivals wait for nobody. */
    held: stations.filter((it) => it.does !== 'arrive'),
    gauges,
    assemblies,
    readers: stations.filter((it) => 'reader' in it && it.reader !== undefined),
    settings: doing('form').flatMap((it) => it.settings ?? []),
    features: parts.flatMap(({ features }) => features),
    gauged: [...new Map(gauges.flatMap(({ measures }) => measures).map((it) => [it.name, it])).values()],
    limited: stocks.filter(({ unlimited }) => !unlimited),
    expedited: stocks.filter(({ expedite }) => expedite),
  };
}

export type Named = ReturnType<typeof namedIn>;
