import type { Estimate } from '../statistics/estimate.ts';

/** What is to be written: a measure with its estimates and, where there are such, differences. */
interface Written {
  readonly measure: { readonly shown: { readonly unit: string; readonly factor: number } };
  /** What a difference must exceed to be worth having, in the keyed unit; none by default. */
  readonly worth?: number;
  readonly rows: readonly { readonly estimate: Estimate; readonly difference?: Estimate | null }[];
}

/** How the numbers of one measure are written: one unit and one number of decimals for all of them. */
export interface Format {
  readonly unit: string;
  /** Unit of a difference; that of two percentages is a percentage point. */
  readonly differenceUnit: string;
  readonly decimals: number;
  value(base: number): string;
  /** With its sign, plus included. */
  signed(base: number): string;
  /** `2.2 to 4.0`, or `no interval`. */
  interval(estimate: Estimate): string;
}

/** A value is never shown with more digits than this, before and after the point together. */
const MOST_DIGITS = 6;

/** A typographic minus, which lines up with plus and cannot be taken for a hyphen. */
function withMinus(text: string): string {
  return text.replaceAll('-', '\u2212');
}

/** Rounded to `decimals`; what rounds to nothing has no sign. */
export function fixed(value: number, decimals: number): string {
  if (Math.abs(value) >= 1e6) return withMinus(value.toPrecision(4).replace('e+', 'e'));
  const text = value.toFixed(decimals);
  return withMinus(Number(text) === 0 ? text.replace('-', '') : text);
}

/** A share of the whole as a percentage with one decimal. */
export function percent(share: number): string {
  return fixed(share * 100, 1);
}

function magnitude(value: number): number {
  return Math.floor(Math.log10(value));
}

/** Decimals that show the first digit of `size`, and its second where the first is small. */
export function decimalsFor(size: number): number {
  const power = magnitude(size);
  return size / 10 ** power < 2 ? 1 - power : -power;
}

/** Whether with so many decimals an end of an interval reads as what it does not equal. */
function blurred(end: number, threshold: number, decimals: number): boolean {
  return end !== threshold && end.toFixed(decimals) === threshold.toFixed(decimals);
}

function decimalsOf({ measure, worth = 0, rows }: Written): number {
  const factor = measure.shown.factor;
  const estimates = rows.flatMap(({ estimate, difference }) =>
    difference ? [estimate, difference] : [estimate],
  );
  const largest = Math.max(...estimates.map(({ value }) => Math.abs(value) * factor));
  const halves = estimates
    .flatMap(({ lower, upper }) => (lower === null || upper === null ? [] : [((upper - lower) / 2) * factor]))
    // What is left of rounding in an interval without width is no size to go by.
    .filter((half) => half > 1e-9 * Math.max(1, largest));
  let decimals =
    halves.length > 0 ? decimalsFor(Math.min(...halves)) : 2 - (largest > 0 ? magnitude(largest) : 1);
  decimals = Math.min(decimals, 3);
  // An end that decides must not be shown as zero, or the verdict beside it would look wrong.
  for (const { difference } of rows) {
    if (!difference || difference.lower === null || difference.upper === null) continue;
    const nearest = Math.min(Math.abs(difference.lower), Math.abs(difference.upper)) * factor;
    const decided = difference.lower > 0 || difference.upper < 0;
    if (decided && nearest > 0) decimals = Math.max(decimals, -magnitude(nearest));
  }
  const before = largest >= 1 ? magnitude(largest) + 1 : 1;
  const most = MOST_DIGITS - before;
  // Nor as just what is worth having.
  const ends =
    worth > 0 ? rows.flatMap(({ difference: own }) => [own?.lower ?? [], own?.upper ?? []].flat()) : [];
  const near = (end: number) => blurred(Math.abs(end) * factor, worth * factor, Math.max(0, decimals));
  while (decimals < most && ends.some(near)) decimals++;
  return Math.max(0, Math.min(decimals, most));
}

function differenceUnitOf(unit: string): string {
  return unit === '%' ? 'percentage points' : unit;
}

/** `0.5 good /h`, `1 percentage points`: an amount of a difference as somebody wrote it, without the digits that binary arithmetic adds. */
export function amount(base: number, { shown }: Written['measure']): string {
  return `${Number((base * shown.factor).toPrecision(9))} ${differenceUnitOf(shown.unit)}`;
}

/** The way to write every number of one measure. */
export function formatOf(compared: Written): Format {
  const { unit, factor } = compared.measure.shown;
  const decimals = decimalsOf(compared);
  const value = (base: number) => fixed(base * factor, decimals);
  return {
    unit,
    differenceUnit: differenceUnitOf(unit),
    decimals,
    value,
    signed: (base) => {
      const text = value(base);
      return base > 0 && Number(text) !== 0 ? `+${text}` : text;
    },
    interval: ({ lower, upper }) =>
      lower === null || upper === null ? 'no interval' : `${value(lower)} to ${value(upper)}`,
  };
}
