import type { Path } from '../problem.ts';
import { isSource } from '../stations.ts';
import type { Checker } from './checker.ts';

/** The places that the text under `to` names, sound or not, with where each stands. */
function targetsIn(to: unknown): { readonly path: Path; readonly word: string }[] {
  if (typeof to === 'string') return [{ path: ['to'], word: to }];
  const routes = (to as { routes?: unknown } | null | undefined)?.routes;
  const words = Array.isArray(routes)
    ? [...routes.entries()]
    : Object.keys(routes ?? {}).map((key) => [key, key]);
  return words.flatMap(([key, word]) =>
    typeof word === 'string' ? [{ path: ['to', 'routes', key as PropertyKey], word }] : [],
  );
}

/** Whether the places a station passes its parts to are there. A station with other problems still says where. */
export function checkRoutes(check: Checker, name: string): void {
  for (const { path: within, word } of targetsIn(check.names.next.get(name))) {
    if (/^$|^[\d\s]/.test(word) && !check.stations.has(name)) continue;
    const path = ['stations', name, ...within];
    if (word === name) {
      check.sayOf(path, word, 'a station cannot pass its parts to itself');
      continue;
    }
    if (!check.known(path, word, ['good', ...check.names.stations], 'station (or "good")')) continue;
    const next = check.stations.get(word);
    if (next && isSource(next)) {
      check.sayOf(
        path,
        word,
        next.does === 'arrive'
          ? `parts come to "${word}" from outside, so no station can feed it`
          : `"${word}" takes from stock, so no station can feed it`,
      );
    }
  }
}

/** Whether every way is taken where the first with room is. The scenario must be whole. */
export function checkPriorities(check: Checker): void {
  const { raw, stations } = check;
  for (const { name, to } of raw.stations) {
    if (to.by !== 'priority') continue;
    const i = to.routes.findIndex(({ to: word }) => {
      const next = stations.get(word);
      return next
        ? 'buffer' in next && next.buffer?.places === Number.POSITIVE_INFINITY
        : raw.demand === undefined;
    });
    if (i < 0 || i === to.routes.length - 1) continue;
    check.say(
      ['stations', name, 'to', 'routes', i],
      `"${to.routes[i]!.to}" always has room, so no part takes a way listed after it; list it last`,
    );
  }
}
