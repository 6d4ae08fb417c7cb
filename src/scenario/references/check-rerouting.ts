import type { Path } from '../problem.ts';
import type { ResponseOf } from '../responses.ts';
import { routesOf } from '../routes.ts';
import { isSource } from '../stations.ts';
import type { Checker } from './checker.ts';

/** Stations that parts must not miss, with what is done there: features are made, or mates are put in. */
function makers({ raw }: Checker): Map<string, string> {
  const made = (raw.parts ?? []).flatMap(({ features }) =>
    features.map(({ name, madeAt }) => [madeAt, `where "${name}" is made`] as const),
  );
  const assembled = raw.stations.flatMap(({ does, name }) =>
    does === 'assemble' ? [[name, 'where mates are put in'] as const] : [],
  );
  return new Map([...made, ...assembled]);
}

/** Whether a station can take the parts of another, and all that must be done with them is still done on that way. */
export function checkRerouted(check: Checker, { at, to }: ResponseOf<'reroute'>, path: Path): void {
  const { stations, names, ways } = check;
  const say = (message: string) => check.say([...path, 'to'], message);
  const known = check.known([...path, 'at'], at, names.stations, 'station');
  if (!check.known([...path, 'to'], to, names.stations, 'station') || !known) return;
  const [from, next] = [stations.get(at), stations.get(to)];
  if (!from || !next) return;
  if (at === to) return say('a station cannot pass its parts to itself; name another');
  if (isSource(next)) return say(`"${to}" takes no parts from other stations; name one that does`);
  if (next.does === 'rework') return say(`"${to}" is for rejects; send them there by "do: reject"`);
  const usual = routesOf(from);
  if (usual.length === 1 && usual[0] === to)
    return say(`the parts of "${at}" go to "${to}" anyway; name another station`);
  if (stations.size < names.stations.length) return;
  if (ways.lead(to, at))
    return say(`parts would come back to "${at}" from there, round and round; name another station`);
  for (const [maker, why] of makers(check)) {
    if (!ways.lead(at, maker) || ways.avoid(at, maker) || !ways.avoid(to, maker)) continue;
    return say(`from "${to}" parts do not come to "${maker}", ${why}; name a station before it`);
  }
}
