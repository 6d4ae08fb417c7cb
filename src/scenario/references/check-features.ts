import type { FeatureSpec } from '../parts.ts';
import type { Path } from '../problem.ts';
import type { StationSpec } from '../stations.ts';
import { checkCorrelations } from './check-correlations.ts';
import { checkFollows } from './check-follows.ts';
import { checkExpansion } from './check-warmth.ts';
import type { Checker } from './checker.ts';

/** What only a formed feature has. */
const FORMED = {
  cavities: 'only a formed feature has cavities',
  mould: 'only a formed feature has a mould',
  gains: 'only a formed feature follows forming settings',
  curvatures: 'only a formed feature follows forming settings',
  interactions: 'only a formed feature follows forming settings',
} as const;

function checkFeature(check: Checker, feature: FeatureSpec, maker: StationSpec, path: Path): void {
  if (maker.does !== 'trim' && feature.wear)
    check.say(
      [...path, 'wear'],
      `only a trimmed feature changes as a tool wears; "${maker.name}" does ${maker.does}`,
    );
  if (maker.does !== 'form') {
    for (const key of Object.keys(FORMED) as (keyof typeof FORMED)[]) {
      const given = feature[key];
      // Nothing in it asks for nothing.
      const empty = key !== 'cavities' && typeof given === 'object' && Object.keys(given).length === 0;
      if (given !== undefined && !empty)
        check.say([...path, key], `${FORMED[key]}; "${maker.name}" does ${maker.does}`);
    }
    return;
  }
  if (feature.cavities && feature.cavities.length !== maker.perSheet) {
    check.say(
      [...path, 'cavities'],
      `${feature.cavities.length} offsets for ${maker.perSheet} cavities; expected one for each part of a sheet`,
    );
  }
  checkFollows(check, feature, maker, path);
}

/** Parts share a sheet and its delivery by being formed from it. */
function checkShared(check: Checker, feature: FeatureSpec, path: Path): void {
  // A station with problems of its own may be the one that forms.
  if (check.stations.size < check.names.stations.length) return;
  if (check.raw.stations.some(({ does }) => does === 'form')) return;
  const shared = [
    ['lot-sd', feature.lotSd, 'delivery of sheet'],
    ['sheet-sd', feature.sheetSd, 'sheet'],
  ] as const;
  for (const [key, sd, what] of shared)
    if (sd > 0)
      check.say(
        [...path, key],
        `no station forms parts here, so none share a ${what}; take "${key}" out, or give the variation as "own-sd"`,
      );
}

/** Where features are made, what they follow and how they vary together. */
export function checkFeatures(check: Checker): void {
  for (const [i, part] of (check.raw.parts ?? []).entries()) {
    if (i > 0) check.say(['parts', part.name], 'a line makes one kind of part in this version of the format');
    for (const feature of part.features) {
      const path = ['parts', part.name, 'features', feature.name];
      check.station([...path, 'made-at'], feature.madeAt, ['form', 'trim']);
      const maker = check.stations.get(feature.madeAt);
      if (maker) checkFeature(check, feature, maker, path);
      checkShared(check, feature, path);
      checkExpansion(check, feature, path);
    }
    checkCorrelations(check, part.features, part.correlations ?? [], ['parts', part.name, 'correlations']);
  }
  for (const { name, features, correlations } of check.raw.stock) {
    if (correlations) checkCorrelations(check, features ?? [], correlations, ['stock', name, 'correlations']);
  }
}
