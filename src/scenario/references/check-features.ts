import { nameOf } from '../units.ts';
import type { Checker } from './checker.ts';

/** Where features are made and what they follow. */
export function checkFeatures(check: Checker): void {
  for (const [i, part] of (check.raw.parts ?? []).entries()) {
    if (i > 0) check.say(['parts', part.name], 'a line makes one kind of part in this version of the format');
    for (const feature of part.features) {
      const path = ['parts', part.name, 'features', feature.name];
      check.station([...path, 'made-at'], feature.madeAt, ['form', 'trim']);
      const maker = check.stations.get(feature.madeAt);
      if (!maker) continue;
      if (maker.does !== 'trim' && feature.wear)
        check.say(
          [...path, 'wear'],
          `only a trimmed feature changes as a tool wears; "${maker.name}" does ${maker.does}`,
        );
      const gains = Object.entries(feature.gains ?? {});
      if (maker.does !== 'form') {
        if (feature.cavities !== undefined)
          check.say(
            [...path, 'cavities'],
            `only a formed feature has cavities; "${maker.name}" does ${maker.does}`,
          );
        if (feature.mould !== undefined)
          check.say(
            [...path, 'mould'],
            `only a formed feature has a mould; "${maker.name}" does ${maker.does}`,
          );
        if (gains.length > 0)
          check.say(
            [...path, 'gains'],
            `only a formed feature follows forming settings; "${maker.name}" does ${maker.does}`,
          );
        continue;
      }
      if (feature.cavities && feature.cavities.length !== maker.perSheet) {
        check.say(
          [...path, 'cavities'],
          `${feature.cavities.length} offsets for ${maker.perSheet} cavities; expected one for each part of a sheet`,
        );
      }
      for (const [name, gain] of gains) {
        const own = (maker.settings ?? []).map((setting) => setting.name);
        if (!check.known([...path, 'gains', name], name, ['thickness', ...own], `setting of "${maker.name}"`))
          continue;
        if (name === 'thickness' && check.stock(maker.takes) && !check.stock(maker.takes)?.thickness) {
          check.say([...path, 'gains', name], `the stock "${maker.takes}" has no thickness`);
        }
        const dimension = name === 'thickness' ? 'length' : check.settings.get(name)!.dimension;
        if (gain.per !== dimension) {
          check.say(
            [...path, 'gains', name],
            `"${name}" is ${nameOf(dimension)}, so its gain is a length per ${dimension}`,
          );
        }
      }
    }
  }
}
