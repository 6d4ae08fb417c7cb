/** A number that was taken out, and which others it is like: those of one track lie close together. */
export interface Taken {
  readonly track: string;
  readonly number: number;
}

/** What holds lengths, mm. They are shown to four decimals, and kept so. */
const LENGTHS: ReadonlySet<string> = new Set(['reading', 'size', 'clearances']);
const FINENESS = 1e4;

const walk = (
  value: unknown,
  track: string,
  scale: number,
  act: (number: number, track: string, scale: number) => unknown,
): unknown => {
  if (typeof value === 'number') return act(value, track, scale);
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map((one, i) => walk(one, `${track} ${i}`, scale, act));
  const entries = Object.entries(value);
  const named = entries.flatMap(([key, own]) => (key === 'stock' || key === 'feature' ? [String(own)] : []));
  const below = [track, ...named].join(' ');
  return Object.fromEntries(
    entries.map(([key, own]) => [
      key,
      walk(own, `${below} ${key}`, LENGTHS.has(key) ? FINENESS : scale, act),
    ]),
  );
};

/** Parts plain data into what recurs and its numbers, in the order in which they stand. */
export function taken(data: object): { readonly rest: object; readonly numbers: readonly Taken[] } {
  const numbers: Taken[] = [];
  const rest = walk(data, '', 1, (number, track, scale) => {
    const whole = Math.round(scale === 1 ? number : Number(number.toFixed(4)) * scale);
    numbers.push({ track, number: whole });
    return 0;
  });
  return { rest: rest as object, numbers };
}

/** The tracks of the numbers that belong into `rest`. */
export const tracksOf = (rest: object): string[] => taken(rest).numbers.map(({ track }) => track);

/** Puts numbers back, in the order in which they were taken out. */
export function filled(rest: object, next: () => number): object {
  return walk(rest, '', 1, (_, __, scale) => next() / scale) as object;
}
