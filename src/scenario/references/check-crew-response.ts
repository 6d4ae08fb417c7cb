import type { Path } from '../problem.ts';
import type { ResponseOf } from '../responses.ts';
import { callsOf } from './calls.ts';
import type { Checker } from './checker.ts';

export function checkCalledCrew(check: Checker, { crew }: ResponseOf<'call-crew'>, path: Path): void {
  check.known([...path, 'crew'], crew, check.names.crew, 'crew');
}

/** Whether the crew is there and each of the stations calls it. */
export function checkPrioritised(check: Checker, it: ResponseOf<'prioritise'>, path: Path): void {
  const known = check.known([...path, 'crew'], it.crew, check.names.crew, 'crew');
  for (const [i, station] of it.first.entries()) {
    const at = [...path, 'first', i];
    check.station(at, station, []);
    const spec = check.stations.get(station);
    if (it.first.indexOf(station) < i) check.say(at, `"${station}" is listed twice; keep one of the two`);
    else if (known && spec && !callsOf(spec).some(({ crew }) => crew === it.crew))
      check.say(at, `"${station}" never calls "${it.crew}", so it cannot be served first; take it out`);
  }
}
