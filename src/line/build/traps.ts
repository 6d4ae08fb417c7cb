import type { Scenario } from '../../scenario/scenario.ts';
import { gathers, isSource, loadOf, type StationSpec } from '../../scenario/stations.ts';
import { waysAfter } from './circles.ts';
import type { Plan } from './plan.ts';

/**
 * The stations that work on batches of parts all of which are on carriers taken at `from`: there parts wait for more
 * parts, which wait for carriers.
 */
function trapsOf(
  scenario: Scenario,
  { from, to }: { readonly from: string; readonly to?: string | undefined },
): readonly string[] {
  const { stations } = scenario;
  const after = waysAfter(scenario);
  const reached = (starts: readonly string[], past: (name: string) => boolean) => {
    const all = new Set(starts);
    for (const name of all) if (past(name)) for (const next of after.get(name) ?? []) all.add(next);
    return all;
  };
  const carried = reached(after.get(from) ?? [], () => true);
  const sources = stations.filter((spec) => isSource(spec) && spec.name !== from).map(({ name }) => name);
  const bare = reached([...sources, ...(after.get(to ?? '') ?? [])], (name) => name !== from);
  return stations
    .filter((spec) => gathers(spec) && carried.has(spec.name) && !bare.has(spec.name))
    .map(({ name }) => name);
}

/** What a station that waits for several parts calls when it has some, but not all; null where carriers cannot run out by it. */
export function shortOf(spec: StationSpec, { line, scenario }: Plan): (() => void) | null {
  const circling = scenario.carriers.filter((it) => trapsOf(scenario, it).includes(spec.name));
  if (circling.length === 0) return null;
  const carriers = circling.map(({ name }) => line.carriers.get(name)!);
  const trap = { name: spec.name, inbox: line.stations.get(spec.name)!.inbox!, batch: loadOf(spec) };
  for (const each of carriers) each.traps.push(trap);
  return () => {
    for (const each of carriers) each.refuseStandstill();
  };
}
