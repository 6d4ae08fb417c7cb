import type { Path } from '../problem.ts';
import type { ResponseOf } from '../responses.ts';
import type { StationSpec } from '../stations.ts';
import type { Checker } from './checker.ts';

const needs = ({ breakdowns }: StationSpec, stock: string): boolean =>
  breakdowns.some(({ spare }) => spare === stock);

/** Whether the spare is a cutting tool, which a piece taken out would not renew. */
const isTool = (station: StationSpec, stock: string): boolean =>
  station.does === 'trim' &&
  station.breakdowns.some(({ name, spare }) => spare === stock && station.tool?.renewedBy.includes(name));

/** Whether a spare is one, and can be taken out of what is named for a machine that needs it. */
export function checkCannibalising(
  check: Checker,
  { spare, from }: ResponseOf<'cannibalise'>,
  path: Path,
): void {
  if (!check.known([...path, 'spare'], spare, check.names.stock, 'stock')) return;
  // A station with problems of its own may be one of them.
  const whole = check.raw.stations.length === check.names.stations.length;
  const users = check.raw.stations.filter((station) => needs(station, spare));
  if (whole && users.length === 0)
    return check.say(
      [...path, 'spare'],
      `no repair needs "${spare}"; name it under "spare" of a breakdown, or take this response out`,
    );
  if (users.some((station) => isTool(station, spare)))
    return check.say(
      [...path, 'spare'],
      `"${spare}" renews a tool, and one that is taken out is not new; let another breakdown need it, or take this response out`,
    );
  if (check.stock(spare)?.unlimited)
    return check.say([...path, 'spare'], `"${spare}" never runs out, so no machine is taken apart for it`);
  for (const [i, name] of from.entries()) {
    const at = [...path, 'from', i];
    if (!check.known(at, name, check.names.stations, 'station')) continue;
    const station = check.stations.get(name);
    if (from.indexOf(name) < i) check.say(at, `"${name}" is listed twice`);
    else if (station && !needs(station, spare))
      check.say(
        at,
        `no breakdown of "${name}" needs "${spare}", so it has none to give; it is needed at ${users.map((user) => user.name).join(', ')}`,
      );
    else if (whole && users.length === 1 && station?.machines === 1)
      check.say(
        at,
        `"${name}" is the only machine that needs "${spare}", and cannot give it to itself; take this response out`,
      );
  }
}
