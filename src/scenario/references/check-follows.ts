import type { FeatureSpec } from '../parts.ts';
import type { Path } from '../problem.ts';
import type { SpecOf } from '../stations.ts';
import { type Dimension, nameOf } from '../units.ts';
import type { Checker } from './checker.ts';

type Maker = SpecOf<'form'> & { readonly name: string };

/** The dimension of what a feature made at `maker` follows: a setting or the thickness; says so at `path` where it is neither. */
function dimensionOf(check: Checker, maker: Maker, path: Path, name: string): Dimension | undefined {
  const own = (maker.settings ?? []).map((setting) => setting.name);
  if (!check.known(path, name, ['thickness', ...own], `setting of "${maker.name}"`)) return undefined;
  if (name !== 'thickness') return check.settings.get(name)!.dimension;
  if (check.stock(maker.takes) && !check.stock(maker.takes)?.thickness)
    check.say(path, `the stock "${maker.takes}" has no thickness`);
  return 'length';
}

/** Whether the settings that a formed feature follows are there, and its gains have their units. */
export function checkFollows(check: Checker, feature: FeatureSpec, maker: Maker, path: Path): void {
  for (const [name, gain] of Object.entries(feature.gains ?? {})) {
    const dimension = dimensionOf(check, maker, [...path, 'gains', name], name);
    if (dimension && gain.per !== dimension)
      check.say(
        [...path, 'gains', name],
        `"${name}" is ${nameOf(dimension)}, so its gain is a length per ${dimension}`,
      );
  }
  for (const [name, { per }] of Object.entries(feature.curvatures ?? {})) {
    const dimension = dimensionOf(check, maker, [...path, 'curvatures', name], name);
    if (dimension && per.some((it) => it !== dimension))
      check.say(
        [...path, 'curvatures', name],
        `"${name}" is ${nameOf(dimension)}, so its curvature is a length per ${dimension} squared`,
      );
  }
  for (const [i, { of, gain }] of (feature.interactions ?? []).entries()) {
    const at = [...path, 'interactions', i];
    const dimensions = of.map((name, k) => dimensionOf(check, maker, [...at, 'of', k], name));
    if (of[0] === of[1]) check.say([...at, 'of'], `for the square of "${of[0]}" give a curvature`);
    else if (!dimensions.includes(undefined) && [...dimensions].sort().join() !== [...gain.per].sort().join())
      check.say(
        [...at, 'gain'],
        `"${of[0]}" is ${nameOf(dimensions[0]!)} and "${of[1]}" is ${nameOf(dimensions[1]!)}, so expected a length per both`,
      );
  }
}
