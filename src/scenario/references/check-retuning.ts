import type { Path } from '../problem.ts';
import type { ResponseOf } from '../responses.ts';
import { nameOf } from '../units.ts';
import type { Checker } from './checker.ts';

/** Whether the feature's readings are taken and can guide the setting, by a gain and a step in its units. */
export function checkRetuning(check: Checker, it: ResponseOf<'retune'>, path: Path): void {
  const setting = check.settings.get(it.setting);
  if (check.known([...path, 'setting'], it.setting, check.names.settings, 'setting of a forming station')) {
    const unlike = (dimension: string | undefined) => setting && dimension && setting.dimension !== dimension;
    if (unlike(it.gain?.per))
      check.say(
        [...path, 'gain'],
        `"${it.setting}" is ${nameOf(setting!.dimension)}, so its gain is a length per ${setting!.dimension}`,
      );
    if (unlike(it.step?.dimension))
      check.say(
        [...path, 'step'],
        `"${it.setting}" is ${nameOf(setting!.dimension)}, so expected a step in its units`,
      );
  }
  if (!check.known([...path, 'by'], it.by, check.names.features, 'feature')) return;
  const feature = check.raw.parts?.flatMap((part) => part.features).find(({ name }) => name === it.by);
  const gain = feature?.gains?.[it.setting];
  if (feature && setting && !gain?.value)
    check.say([...path, 'by'], `"${it.by}" has no gain for "${it.setting}", so its readings cannot guide it`);
  checkGauged(check, it.by, [...path, 'by']);
}

/** Whether the feature is gauged, and so that its readings tell of which part they are. */
function checkGauged(check: Checker, feature: string, path: Path): void {
  const { raw, names, stations, ways } = check;
  // A station with problems of its own may be the one that gauges, or marks.
  if (stations.size < names.stations.length) return;
  const gauges = raw.stations.flatMap((station) =>
    station.does === 'gauge' && station.measures.some(({ name }) => name === feature) ? [station.name] : [],
  );
  const marks = raw.stations.flatMap(({ does, name }) => (does === 'mark' ? [name] : []));
  if (gauges.length === 0) check.say(path, `no station gauges "${feature}"`);
  else if (marks.length > 0 && !gauges.some((gauge) => marks.some((mark) => ways.lead(mark, gauge))))
    check.say(
      path,
      `"${feature}" is gauged at "${gauges.join('" and "')}" before parts are marked, so no reading tells how its part was formed; let "${marks[0]}" come first`,
    );
}
