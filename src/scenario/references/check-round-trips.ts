import type { Path } from '../problem.ts';
import type { ResponseOf, ResponseSpec } from '../responses.ts';
import { routesOf } from '../routes.ts';
import type { Checker } from './checker.ts';

type Reroute = ResponseOf<'reroute'>;

/** Whether ways that one policy turns would together lead parts round and round, where none of them does by itself. */
export function checkRoundTrips(
  check: Checker,
  responses: readonly ResponseSpec[],
  pathOf: (i: number) => Path,
): void {
  const { stations, names, ways } = check;
  const turned = responses.flatMap((it, i) => (it.do === 'reroute' ? [{ it, i }] : []));
  if (turned.length < 2 || stations.size < names.stations.length) return;
  const comesBack = ({ at, to }: Reroute): boolean => {
    const seen = new Set<string>();
    const open = [to];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (next === at) return true;
      const station = stations.get(next);
      if (seen.has(next) || !station) continue;
      seen.add(next);
      open.push(...routesOf(station));
      for (const { it } of turned) if (it.at === next) open.push(it.to);
    }
    return false;
  };
  const last = turned.findLast(({ it }) => it.at !== it.to && !ways.lead(it.to, it.at) && comesBack(it));
  if (last)
    check.say(
      [...pathOf(last.i), 'to'],
      `with the other ways that this policy turns, parts would come back to "${last.it.at}" from there, round and round; name another station`,
    );
}
