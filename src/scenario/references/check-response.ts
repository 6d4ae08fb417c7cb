import type { Path } from '../problem.ts';
import type { ResponseSpec } from '../responses.ts';
import type { Checker } from './checker.ts';

/** A station that inspects lots has a plan of its own for which parts it gauges. */
function checkInspected(check: Checker, at: string, path: Path): void {
  const station = check.stations.get(at);
  if (station?.does === 'gauge' && station.inspection.by === 'plan')
    check.say(
      [...path, 'at'],
      `"${at}" inspects lots by its acceptance plan, so it cannot gauge one part in so many; take one of them out`,
    );
}

/** Whether what a response watches and changes is there and can be watched and changed. */
export function checkResponse(check: Checker, it: ResponseSpec, path: Path): void {
  switch (it.do) {
    case 'stop-and-fix': {
      check.station([...path, 'station'], it.station, []);
      check.station([...path, 'watch', 'at'], it.watch.at, ['gauge', 'assemble']);
      const at = check.stations.get(it.watch.at);
      if (at?.does === 'gauge' && it.watch.sees === 'misfits')
        check.say(
          [...path, 'watch', 'sees'],
          `"${at.name}" gauges; misfits are seen where parts are assembled`,
        );
      if (at?.does === 'assemble' && it.watch.sees === 'off-limits')
        check.say(
          [...path, 'watch', 'sees'],
          `"${at.name}" assembles; readings off limits are seen where parts are gauged`,
        );
      if (it.watch.sees === 'unread' && at && !('reader' in at && at.reader))
        check.say([...path, 'watch', 'sees'], `"${at.name}" has no reader, so no mark can go unread there`);
      return;
    }
    case 'inspect':
      check.station([...path, 'at'], it.at, ['gauge']);
      checkInspected(check, it.at, path);
      if (it.offLimits !== undefined) check.reject([...path, 'off-limits'], it.offLimits, ['pass', 'scrap']);
      return;
    case 'retune': {
      check.known([...path, 'setting'], it.setting, check.names.settings, 'setting of a forming station');
      if (!check.known([...path, 'by'], it.by, check.names.features, 'feature')) return;
      const feature = check.raw.parts?.flatMap((part) => part.features).find(({ name }) => name === it.by);
      const gain = feature?.gains?.[it.setting];
      if (feature && check.settings.has(it.setting) && !gain?.value)
        check.say(
          [...path, 'by'],
          `"${it.by}" has no gain for "${it.setting}", so its readings cannot guide it`,
        );
      // A station with problems of its own may be the one that gauges.
      const gauged =
        check.stations.size < check.names.stations.length ||
        check.raw.stations.some(
          (station) => station.does === 'gauge' && station.measures.some(({ name }) => name === it.by),
        );
      if (!gauged) check.say([...path, 'by'], `no station gauges "${it.by}"`);
      return;
    }
    case 'match':
      return check.station([...path, 'at'], it.at, ['assemble']);
    case 'rework':
      check.station([...path, 'at'], it.at, ['gauge', 'assemble']);
      return check.station([...path, 'bench'], it.bench, ['rework']);
  }
}
