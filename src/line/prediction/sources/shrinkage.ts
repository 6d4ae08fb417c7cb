import type { Scenario } from '../../../scenario/scenario.ts';
import type { Source } from '../source.ts';

/** What the shrinkage of a delivery of sheet takes off the features that shrink from a mould. */
export function shrinkageSources({ parts, stations, stocks }: Scenario): Source[] {
  const forming = stations.find((station) => station.does === 'form');
  const shrinks = stocks.find(({ name }) => name === forming?.takes)?.shrinkage;
  if (!shrinks) return [];
  const of = parts
    .flatMap(({ features }) => features)
    .flatMap(({ name, mould }) => (mould === undefined ? [] : [[name, -mould * shrinks.lotSd] as const]));
  return [{ name: 'shrinkage by lot', of: new Map(of) }];
}
