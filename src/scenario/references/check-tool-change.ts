import type { Path } from '../problem.ts';
import type { ResponseOf } from '../responses.ts';
import type { Checker } from './checker.ts';

/** Whether a trimming station has a tool, and one set-up or maintenance that renews it when asked for. */
export function checkToolChange(
  check: Checker,
  { station, by }: ResponseOf<'change-tool'>,
  path: Path,
): void {
  check.station([...path, 'station'], station, ['trim']);
  const spec = check.stations.get(station);
  if (spec?.does !== 'trim') return;
  const renewedBy = spec.tool?.renewedBy ?? [];
  const known = [...spec.setUps, ...spec.maintenance]
    .map(({ name }) => name)
    .filter((name) => renewedBy.includes(name));
  if (known.length === 0)
    check.say(
      [...path, 'station'],
      `nothing that can be asked for renews a tool of "${station}"; name one of its set-ups or maintenance under "renewed-by" of its "tool"`,
    );
  else if (by !== undefined)
    check.known([...path, 'by'], by, known, `set-up or maintenance that renews a tool of "${station}"`);
  else if (known.length > 1)
    check.say(path, `several renew the tool of "${station}"; say which: "by: ${known[0]}"`);
}
