import { reMarkOf } from '../re-mark.ts';
import { routesOf } from '../routes.ts';
import { isSource, type StationSpec } from '../stations.ts';
import type { Checker } from './checker.ts';

/** Where parts may go from a station besides `to`, and where a policy may send them. */
function rejectsOf(station: StationSpec): string[] {
  const reMarked = reMarkOf(station)?.station;
  const also = reMarked === undefined ? [] : [reMarked];
  if (station.does === 'gauge') {
    const { inspection, offLimits } = station;
    return inspection.by === 'plan' ? [offLimits, inspection.rejected, ...also] : [offLimits, ...also];
  }
  if (station.does !== 'assemble') return also;
  const { misfit, tight = misfit, loose = misfit } = station;
  return [tight, loose, ...also];
}

/** All parts of a line start at one forming station, or, without one, at stations that only work or where parts arrive. */
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

/** What a station needs of a part is made on the way to it, not only after. */
function checkOrder(check: Checker): void {
  const { ways, raw } = check;
  /** For a station, the one of `places` that comes next after it when none comes before it. */
  const lateness = (places: readonly string[]) => {
    const behind = new Set(places.flatMap((place) => [place, ...ways.beyond(place)]));
    return (station: string): string | undefined =>
      behind.has(station) ? undefined : ways.beyond(station).find((name) => places.includes(name));
  };
  const made = new Map(
    (raw.parts ?? []).flatMap(({ features }) =>
      features.map(({ name, madeAt }) => [name, lateness([madeAt])] as const),
    ),
  );
  const marked = lateness(raw.stations.flatMap(({ does, name }) => (does === 'mark' ? [name] : [])));
  for (const station of raw.stations) {
    const { name } = station;
    const used =
      station.does === 'gauge'
        ? station.measures.map((measure) => measure.name)
        : station.does === 'assemble'
          ? station.fits.map(({ hole, shaft }) => (hole.includes('.') ? shaft : hole))
          : [];
    const marker = 'reader' in station && station.reader ? marked(name) : undefined;
    if (marker !== undefined)
      check.say(['stations', name, 'reader'], `parts are marked only later, at "${marker}"`);
    for (const feature of used) {
      const maker = made.get(feature)!(name);
      if (maker !== undefined)
        check.say(['stations', name], `"${feature}" is used here, but made only later, at "${maker}"`);
    }
  }
}

/** Stations that parts never get out of. Returns whether there are any. */
function checkWayOut(check: Checker): boolean {
  const { ways } = check;
  const out = ways.leadingTo('good');
  const told = new Set<string>();
  for (const { name } of check.raw.stations) {
    if (told.has(name) || out.has(name)) continue;
    const round = ways.beyond(name);
    // Of what leads into a circle, the circle is told, not the way to it.
    const back = ways.leadingTo(name);
    if (!round.every((other) => back.has(other))) continue;
    for (const other of round) told.add(other);
    check.say(
      ['stations', name, 'to'],
      `parts from here go round for ever: ${ways.shortest(name, name).join(' > ')}; let one station pass to "good"`,
    );
  }
  return told.size > 0;
}

/** Where parts of a station may go at once, by any way that it or a policy may send them. */
export function anyWays({ raw, stations }: Checker): (name: string) => string[] {
  const sent = raw.policies.flatMap(({ responses }) =>
    responses.flatMap((response): [string, string][] => {
      if (response.do === 'rework') return [[response.at, response.bench]];
      if (response.do === 'reject' || response.do === 'reroute') return [[response.at, response.to]];
      return response.do === 'inspect' && response.offLimits !== undefined
        ? [[response.at, response.offLimits]]
        : [];
    }),
  );
  return (name) => {
    const station = stations.get(name);
    if (!station) return [];
    const ways = [...routesOf(station), ...rejectsOf(station)];
    return [...ways, ...sent.flatMap(([from, to]) => (from === name ? [to] : []))];
  };
}

/** The stations among `starts` and all that parts can reach from them in any way. */
function reached(check: Checker, starts: readonly string[]): ReadonlySet<string> {
  const next = anyWays(check);
  const all = new Set(starts);
  for (const name of all) for (const to of next(name)) all.add(to);
  return all;
}

/** Whether parts of a station may come to it again, in any way that a station or a policy may send them. */
export function comesBack(check: Checker, name: string): boolean {
  return reached(check, anyWays(check)(name)).has(name);
}

/** Whether every station is fed and every part finds a way out. */
export function checkFlow(check: Checker): void {
  const { stations, policies } = check.raw;
  const fed = reached(
    check,
    stations.filter(isSource).map(({ name }) => name),
  );
  for (const station of stations) {
    if (!fed.has(station.name)) {
      check.say(
        ['stations', station.name],
        `nothing feeds "${station.name}": no station passes parts to it, and it is no source`,
      );
    }
  }
  checkSources(check);
  if (!checkWayOut(check)) checkOrder(check);
  if (stations.length === 0) check.say(['stations'], 'a line needs at least one station');
  if (policies.length === 0) check.say(['policies'], 'expected at least one policy, such as "carry on: []"');
}
