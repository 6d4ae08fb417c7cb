import type { Raw } from '../../scenario/raw.ts';

/** One value that a factor takes. */
export interface Level {
  /** As it was given. */
  readonly words: string;
  readonly is: Raw;
}

/** All values between two. */
interface Range {
  readonly from: number;
  readonly to: number;
  /** Such as `min`; empty for plain numbers. */
  readonly unit: string;
  /** Whether whole numbers alone can be. */
  readonly whole: boolean;
}

/** What is varied: a value of the scenario, or the policy. */
export interface Factor {
  /** The place of the value, see `Change`; null for the policy. */
  readonly at: string | null;
  /** What reports call it. */
  readonly name: string;
  /** The values in their order; of a range its ends. */
  readonly levels: readonly Level[];
  /** Null where the values were listed. */
  readonly range: Range | null;
}

/** A setting of all factors, by factor. */
export type Point = readonly Level[];

/** A number with the unit behind it, or null where the value is none. */
export function quantityOf({ is }: Level): { readonly value: number; readonly unit: string } | null {
  if (typeof is === 'number') return { value: is, unit: '' };
  const [, number, unit = ''] =
    typeof is === 'string' ? (/^([-+]?\d*\.?\d+(?:e[-+]?\d+)?)\s*(\S.*)?$/i.exec(is) ?? []) : [];
  return number === undefined ? null : { value: Number(number), unit };
}

/** The values as numbers; null where some value is none, or they differ in their unit. */
export function numbersOf({ levels }: Pick<Factor, 'levels'>): readonly number[] | null {
  const found = levels.map(quantityOf);
  if (found.some((own) => own === null || own.unit !== found[0]!.unit)) return null;
  return found.map((own) => own!.value);
}

/** A value of a range, in the unit of its ends. */
export function levelOf(value: number, { unit, whole }: Range): Level {
  const is = whole ? Math.round(value) : Number(value.toPrecision(12));
  const words = unit === '' ? String(is) : `${is} ${unit}`;
  return { words, is: unit === '' ? is : words };
}

/** Values within a range are told to a thousandth of it or finer, so that they can be read. */
const PARTS = 1000;

/** The value at a share of the way through a range, or through the list, each of whose values has as much of the way. */
export function levelAt({ levels, range }: Factor, share: number): Level {
  if (range === null) return levels[Math.min(levels.length - 1, Math.floor(share * levels.length))]!;
  if (share <= 0 || share >= 1) return levels[share <= 0 ? 0 : 1]!;
  const { from, to } = range;
  const decimals = Math.min(20, Math.max(0, Math.ceil(Math.log10(PARTS / (to - from)))));
  return levelOf(Number((from + share * (to - from)).toFixed(decimals)), range);
}

/** Where a value is on the way from the least to the most of a factor, from 0 to 1; of a list that has no numbers by its place. */
export function shareOf(factor: Factor, level: Level): number {
  const numbers = numbersOf(factor);
  if (numbers === null) return factor.levels.indexOf(level) / (factor.levels.length - 1);
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  return (quantityOf(level)!.value - least) / (most - least);
}

/** Each place without its section, where that tells it from the others. */
export function shortNames(places: readonly string[]): string[] {
  const short = places.map((place) => place.replace(/^[^/]+\/(?=[^/]+\/)/, ''));
  return short.map((name, i) => (short.indexOf(name) === short.lastIndexOf(name) ? name : places[i]!));
}
