import { isSource, type StationSpec } from '../stations.ts';
import type { Checker } from './checker.ts';

/** Where parts may go from a station besides `to`, and where a policy may send them. */
function rejectsOf(station: StationSpec): string[] {
  if (station.does === 'gauge') return [station.offLimits];
  return station.does === 'assemble' ? [station.misfit] : [];
}

/** All parts of a line start at one forming station, or, without one, at stations that only work. */
function checkSources(check: Checker): void {
  const { raw } = check;
  const former = raw.stations.find(({ does }) => does === 'form');
  if (!former) return;
  for (const station of raw.stations) {
    if (station === former || !isSource(station)) continue;
    check.say(
      ['stations', station.name],
      `parts start at "${former.name}" already; a line has one forming station, and no other source beside it, in this version of the format`,
    );
  }
}

/** A feature is gauged, or meets a mate, only after the station that makes it. */
function checkOrder(check: Checker): void {
  const makers = new Map(
    (check.raw.parts ?? []).flatMap((part) => part.features.map(({ name, madeAt }) => [name, madeAt])),
  );
  const marker = check.raw.stations.find(({ does }) => does === 'mark');
  for (const station of check.raw.stations) {
    const used =
      station.does === 'gauge'
        ? station.measures.map(({ name }) => name)
        : station.does === 'assemble'
          ? station.fits.map(({ hole, shaft }) => (hole.includes('.') ? shaft : hole))
          : [];
    if (marker !== undefined && 'reader' in station && station.reader) {
      let at = check.stations.get(station.to);
      while (at && at !== marker) at = check.stations.get(at.to);
      if (at) check.say(['stations', station.name, 'reader'], `parts are marked only later, at "${at.name}"`);
    }
    for (const name of used) {
      let at = check.stations.get(station.to);
      while (at && at.name !== makers.get(name)) at = check.stations.get(at.to);
      if (at) {
        check.say(['stations', station.name], `"${name}" is used here, but made only later, at "${at.name}"`);
      }
    }
  }
}

/** The stations that parts can reach from a source, by any way that a station or a policy may send them. */
function fedStations({ raw, stations }: Checker): Set<string> {
  const sent = raw.policies.flatMap(({ responses }) =>
    responses.flatMap((response): [string, string][] => {
      if (response.do === 'rework') return [[response.at, response.bench]];
      return response.do === 'inspect' && response.offLimits !== undefined
        ? [[response.at, response.offLimits]]
        : [];
    }),
  );
  const fed = new Set<string>();
  const visit = (name: string): void => {
    const station = stations.get(name);
    if (!station || fed.has(name)) return;
    fed.add(name);
    for (const next of [station.to, ...rejectsOf(station)]) visit(next);
    for (const [from, to] of sent) if (from === name) visit(to);
  };
  for (const station of raw.stations) if (isSource(station)) visit(station.name);
  return fed;
}

/** Whether every station is fed and every part finds a way out. */
export function checkFlow(check: Checker): void {
  const { stations, policies } = check.raw;
  const fed = fedStations(check);
  /** Stations of circles that were told. */
  const told = new Set<string>();
  for (const station of stations) {
    if (!fed.has(station.name)) {
      check.say(
        ['stations', station.name],
        `nothing feeds "${station.name}": no station passes parts to it, and it takes no stock`,
      );
    }
    const passed: string[] = [];
    let at: StationSpec | undefined = station;
    while (at && !passed.includes(at.name)) {
      passed.push(at.name);
      at = check.stations.get(at.to);
    }
    if (at !== station || told.has(station.name)) continue;
    for (const name of passed) told.add(name);
    check.say(
      ['stations', station.name, 'to'],
      `parts from here go round for ever: ${[...passed, at.name].join(' > ')}; let one station pass to "good"`,
    );
  }
  checkSources(check);
  // A circle would be walked for ever.
  if (told.size === 0) checkOrder(check);
  if (stations.length === 0) check.say(['stations'], 'a line needs at least one station');
  if (policies.length === 0) check.say(['policies'], 'expected at least one policy, such as "carry on: []"');
}
