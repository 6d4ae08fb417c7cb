import { isSource, type StationSpec } from '../../scenario/stations.ts';
import { waysAfter } from './circles.ts';

/**
 * The stations that work on batches of parts all of which are on carriers taken at `from`: there parts wait for more
 * parts, which wait for carriers.
 */
export function trapsOf(
  stations: readonly StationSpec[],
  { from, to }: { readonly from: string; readonly to?: string | undefined },
): readonly string[] {
  const after = waysAfter(stations);
  const reached = (starts: readonly string[], past: (name: string) => boolean) => {
    const all = new Set(starts);
    for (const name of all) if (past(name)) for (const next of after.get(name) ?? []) all.add(next);
    return all;
  };
  const carried = reached(after.get(from) ?? [], () => true);
  const sources = stations.filter((spec) => isSource(spec) && spec.name !== from).map(({ name }) => name);
  const bare = reached([...sources, ...(after.get(to ?? '') ?? [])], (name) => name !== from);
  return stations
    .filter(
      (spec) => spec.does === 'work' && spec.batch > 1 && carried.has(spec.name) && !bare.has(spec.name),
    )
    .map(({ name }) => name);
}
