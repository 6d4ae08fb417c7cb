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
  // A station with problems of its own may be the one that gauges.
  const gauged =
    check.stations.size < check.names.stations.length ||
    check.raw.stations.some(
      (station) => station.does === 'gauge' && station.measures.some(({ name }) => name === it.by),
    );
  if (!gauged) check.say([...path, 'by'], `no station gauges "${it.by}"`);
}
