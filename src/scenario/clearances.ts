import { isHoleClass } from '../standards/iso-286.ts';
import type { FeatureSpec, PartSpec } from './parts.ts';
import type { StockSpec } from './stocks.ts';

type MateFeature = NonNullable<StockSpec['features']>[number];

/** A feature of the part or of a mate, as far as a fit goes by it. */
export type Side = Pick<FeatureSpec & MateFeature, 'nominal' | 'limits' | 'aim' | 'class'>;

/** Where the features that pairs name are found. */
export interface Sides {
  readonly stocks: readonly StockSpec[];
  readonly parts: readonly PartSpec[];
}

/** A mating pair as a scenario gives it. */
interface PairSpec {
  readonly hole: string;
  readonly shaft: string;
  readonly least?: number | undefined;
  readonly most?: number | undefined;
}

/** The feature of that name: one of the part, or one of a mate as MATE.FEATURE. */
export function sideNamed(named: string, { stocks, parts }: Sides): Side | undefined {
  const dot = named.indexOf('.');
  const features: readonly (FeatureSpec | MateFeature)[] =
    dot < 0
      ? parts.flatMap((part) => part.features)
      : (stocks.find(({ name }) => name === named.slice(0, dot))?.features ?? []);
  return features.find(({ name }) => name === named.slice(dot + 1));
}

/** Why the classes of a pair do not say its clearance limits; undefined when they do or need not. */
export function classFault(pair: PairSpec, sides: Sides): string | undefined {
  const [hole, shaft] = [sideNamed(pair.hole, sides), sideNamed(pair.shaft, sides)];
  if (!hole || !shaft) return undefined;
  if (hole.class !== undefined && !isHoleClass(hole.class))
    return `"${pair.hole}" is the hole of this pair, but ${hole.class} is a class of shafts; those of holes are in upper case`;
  if (shaft.class !== undefined && isHoleClass(shaft.class))
    return `"${pair.shaft}" is the shaft of this pair, but ${shaft.class} is a class of holes; those of shafts are in lower case`;
  if (pair.least !== undefined) return undefined;
  const bare = [hole, shaft].findIndex((side) => side.class === undefined);
  if (bare >= 0)
    return `without "least" and "most" both sides need a class, and "${[pair.hole, pair.shaft][bare]}" has none`;
  if (hole.nominal === shaft.nominal) return undefined;
  return `classes make a fit at one nominal size, and these are ${hole.nominal} and ${shaft.nominal} mm; give "least" and "most"`;
}

/**
 * Least and most clearance of a pair, hole minus shaft, mm: as given, or from the limits of its classes (ISO 286-1:
 * least = EI - es, most = ES - ei).
 */
export function clearances(pair: PairSpec, sides: Sides): { least: number; most: number } {
  const { least, most } = pair;
  if (least !== undefined && most !== undefined) return { least, most };
  const hole = sideNamed(pair.hole, sides)!.limits!;
  const shaft = sideNamed(pair.shaft, sides)!.limits!;
  return { least: hole.lower - shaft.upper, most: hole.upper - shaft.lower };
}
