import type { FeatureSpec } from '../parts.ts';
import type { Path } from '../problem.ts';
import type { SpecOf } from '../stations.ts';
import { type Dimension, nameOf } from '../units.ts';
import type { Checker } from './checker.ts';

/** What a feature made at `maker` may follow. */
class Followed {
  private readonly check: Checker;
  private readonly maker: SpecOf<'form'> & { readonly name: string };

  constructor(check: Checker, maker: SpecOf<'form'> & { readonly name: string }) {
    this.check = check;
    this.maker = maker;
  }

  /** The dimension of a setting or of the thickness; says so at `path` where it is neither. */
  dimension(path: Path, name: string): Dimension | undefined {
    const { check, maker } = this;
    const own = (maker.settings ?? []).map((setting) => setting.name);
    if (!check.known(path, name, ['thickness', ...own], `setting of "${maker.name}"`)) return undefined;
    if (name !== 'thickness') return check.settings.get(name)!.dimension;
    if (check.stock(maker.takes) && !check.stock(maker.takes)?.thickness)
      check.say(path, `the stock "${maker.takes}" has no thickness`);
    return 'length';
  }
}

/** Whether the settings that a formed feature follows are there, and its gains have their units. */
export function checkFollows(
  check: Checker,
  feature: FeatureSpec,
  maker: SpecOf<'form'> & { readonly name: string },
  path: Path,
): void {
  const followed = new Followed(check, maker);
  for (const [name, gain] of Object.entries(feature.gains ?? {})) {
    const dimension = followed.dimension([...path, 'gains', name], name);
    if (dimension && gain.per !== dimension)
      check.say(
        [...path, 'gains', name],
        `"${name}" is ${nameOf(dimension)}, so its gain is a length per ${dimension}`,
      );
  }
  for (const [name, { per }] of Object.entries(feature.curvatures ?? {})) {
    const dimension = followed.dimension([...path, 'curvatures', name], name);
    if (dimension && per.some((it) => it !== dimension))
      check.say(
        [...path, 'curvatures', name],
        `"${name}" is ${nameOf(dimension)}, so its curvature is a length per ${dimension} squared`,
      );
  }
  for (const [i, { of, gain }] of (feature.interactions ?? []).entries()) {
    const at = [...path, 'interactions', i];
    const dimensions = of.map((name, k) => followed.dimension([...at, 'of', k], name));
    if (of[0] === of[1]) check.say([...at, 'of'], `for the square of "${of[0]}" give a curvature`);
    else if (!dimensions.includes(undefined) && [...dimensions].sort().join() !== [...gain.per].sort().join())
      check.say(
        [...at, 'gain'],
        `"${of[0]}" is ${nameOf(dimensions[0]!)} and "${of[1]}" is ${nameOf(dimensions[1]!)}, so expected a length per both`,
      );
  }
}
