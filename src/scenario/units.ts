/** For each dimension: its units with the factor to the base unit (the first), and an example to show. */
const dimensions = {
  time: { units: { s: 1, ms: 0.001, min: 60, h: 3600, d: 86400 }, example: '42 s', called: 'a time' },
  length: {
    units: { mm: 1, um: 0.001, µm: 0.001, cm: 10, m: 1000, in: 25.4 },
    example: '0.3 mm',
    called: 'a length',
  },
  temperature: { units: { '°C': 1, C: 1, K: 1 }, example: '65 °C', called: 'a temperature' },
  pressure: { units: { kPa: 1, Pa: 0.001, bar: 100, mbar: 0.1 }, example: '80 kPa', called: 'a pressure' },
  share: { units: { '%': 0.01 }, example: '2 %', called: 'a share' },
  force: { units: { N: 1, kN: 1000 }, example: '60 N', called: 'a force' },
  rate: {
    units: { '/s': 1, '/min': 1 / 60, '/h': 1 / 3600, '/d': 1 / 86400 },
    example: '12 /h',
    called: 'a rate',
  },
} as const satisfies Record<string, { units: Record<string, number>; example: string; called: string }>;

export type Dimension = keyof typeof dimensions;

/** A number in base units with what it measures. */
export interface Quantity {
  readonly value: number;
  readonly dimension: Dimension;
}

/** The minus sign is taken like the hyphen, since reports print it. */
export const NUMBER_PATTERN = '[+\u2212-]?(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?';
const shape = new RegExp(`^(${NUMBER_PATTERN})\\s*(\\S.*)$`);

export const exampleOf = (dimension: Dimension): string => dimensions[dimension].example;
export const nameOf = (dimension: Dimension): string => dimensions[dimension].called;
export const unitsOf = (dimension: Dimension): readonly string[] => Object.keys(dimensions[dimension].units);

function unit(written: string): { dimension: Dimension; factor: number } | undefined {
  // Keyboards give the micro sign or the Greek letter mu; they look alike.
  const symbol = written.replace('μ', 'µ');
  for (const [dimension, { units }] of Object.entries(dimensions)) {
    if (Object.hasOwn(units, symbol)) {
      return { dimension: dimension as Dimension, factor: (units as Record<string, number>)[symbol]! };
    }
  }
  return undefined;
}

/** Reads a number with a unit, such as `42 s`, into base units; undefined when it is not one. */
export function readQuantity(text: string): Quantity | undefined {
  const match = shape.exec(text.trim());
  const found = match && unit(match[2]!);
  const value = found ? Number(match[1]!.replace('\u2212', '-')) * found.factor : Number.NaN;
  // A number too large to hold is none.
  return found && Number.isFinite(value) ? { value, dimension: found.dimension } : undefined;
}

/** A ratio of two dimensions, such as `0.01 mm/°C`. */
export interface Ratio {
  readonly value: number;
  readonly of: Dimension;
  readonly per: Dimension;
}

/** Reads a ratio, such as `0.01 mm/°C`, into base units; undefined when it is not one. */
export function readRatio(text: string): Ratio | undefined {
  const cut = text.lastIndexOf('/');
  const of = cut > 0 ? readQuantity(text.slice(0, cut)) : undefined;
  const per = cut > 0 ? unit(text.slice(cut + 1).trim()) : undefined;
  return of && per && { value: of.value / per.factor, of: of.dimension, per: per.dimension };
}

/** A ratio of one dimension to the product of two, such as `0.001 mm/°C/kPa`. */
export interface DoubleRatio {
  readonly value: number;
  readonly of: Dimension;
  readonly per: readonly [Dimension, Dimension];
}

/** Reads such a ratio, or one to a square such as `0.002 mm/°C²`, into base units; undefined when it is neither. */
export function readDoubleRatio(text: string): DoubleRatio | undefined {
  const squared = /^(.*\/\s*([^/]+?))\s*(?:²|\^2)\s*$/.exec(text);
  const [, once = text, base] = squared ?? [];
  const full = base === undefined ? once : `${once}/${base}`;
  const cut = full.lastIndexOf('/');
  const first = cut > 0 ? readRatio(full.slice(0, cut)) : undefined;
  const second = cut > 0 ? unit(full.slice(cut + 1).trim()) : undefined;
  return (
    first &&
    second && { value: first.value / second.factor, of: first.of, per: [first.per, second.dimension] }
  );
}

/** Seconds for a message, without the digits that binary arithmetic adds. */
export const secondsText = (seconds: number): string => `${Number(seconds.toPrecision(9))} s`;
