import type { Path } from '../problem.ts';
import { reMarkOf } from '../re-mark.ts';
import type { ResponseOf } from '../responses.ts';
import { gathers, isSource, type SpecOf, type StationSpec } from '../stations.ts';
import type { Checker } from './checker.ts';

/** The rework station that a gauging station or a policy may send its rejects to, if there is one. */
function benchOf(check: Checker, { name, offLimits }: SpecOf<'gauge'> & { readonly name: string }) {
  const sent = check.raw.policies.flatMap(({ responses }) =>
    responses.flatMap((it) => {
      if (it.do === 'rework') return it.at === name ? [it.bench] : [];
      if (it.do === 'reject') return it.at === name ? [it.to] : [];
      return it.do === 'inspect' && it.at === name && it.offLimits !== undefined ? [it.offLimits] : [];
    }),
  );
  return [offLimits, ...sent].find((to) => check.benches.includes(to));
}

/** Why what goes past a station could not be sent through it when all else is done; undefined where it can. */
function notLater(check: Checker, spec: StationSpec): string | undefined {
  if (gathers(spec))
    return `"${spec.name}" starts only when several parts are there, so that one might wait for ever`;
  const back = spec.does === 'gauge' ? (benchOf(check, spec) ?? reMarkOf(spec)?.station) : undefined;
  return back === undefined
    ? undefined
    : `"${spec.name}" may send parts back to "${back}", from where they would go through the line again`;
}

/** Whether parts can go past the station, and be done later if they are to be. */
export function checkSkipped(check: Checker, { station, later }: ResponseOf<'skip'>, path: Path): void {
  const at = [...path, 'station'];
  check.station(at, station, ['work', 'mark', 'gauge']);
  const spec = check.stations.get(station);
  if (!spec || !['work', 'mark', 'gauge'].includes(spec.does)) return;
  if (isSource(spec))
    return check.say(at, `parts start at "${station}", so none can go past it; name another station`);
  const carriers = check.raw.carriers.find(({ from }) => from === station);
  if (carriers)
    return check.say(
      at,
      `parts take the carriers "${carriers.name}" here, so they cannot go past; let another station take them`,
    );
  if (check.ways.lead(station, station))
    return check.say(
      at,
      `parts come to "${station}" again and again, so they cannot go past it; name another station`,
    );
  const why = later ? notLater(check, spec) : undefined;
  if (why !== undefined) check.say([...path, 'later'], `${why}; say "later: no"`);
}
