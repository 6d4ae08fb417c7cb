import { Checker, type Names, type Raw } from './references/checker.ts';
import type { Scenario } from './scenario.ts';

const namesOf = (entries: readonly { readonly name: string }[]) => entries.map(({ name }) => name);

/** What checks entries that stand in no file by a scenario that is sound. */
export function furtherChecker(scenario: Scenario): Checker {
  const { stocks, parts, stations, crew, calendars, disturbances, demand } = scenario;
  // The very data the checks are made for, but for what may be changed in it.
  const raw = { ...scenario, mendline: 1, stock: stocks, demand: demand ?? undefined } as unknown as Raw;
  const names: Names = {
    stock: namesOf(stocks),
    parts: namesOf(parts),
    stations: namesOf(stations),
    crew: namesOf(crew),
    calendars: namesOf(calendars),
    disturbances: namesOf(disturbances),
    features: namesOf(parts.flatMap(({ features }) => features)),
    settings: namesOf(stations.flatMap((it) => (it.does === 'form' ? (it.settings ?? []) : []))),
    next: new Map(),
    // No faulty entry was left out.
    given: () => false,
    places: new Map(),
  };
  return new Checker(raw, names);
}
