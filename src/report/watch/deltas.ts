/** Whole numbers, each less the one before: short to write where neighbours lie close together. */
export const deltas = (values: readonly number[]): number[] =>
  values.map((value, i) => value - (values[i - 1] ?? 0));

/** The numbers again. */
export function sums(deltas: readonly number[]): Float64Array {
  let sum = 0;
  return Float64Array.from(deltas, (delta) => (sum += delta));
}

/** The last place whose value is at most `limit`, in values that never fall; -1 where there is none. */
export function lastUpTo(values: ArrayLike<number>, limit: number, from = 0, to = values.length): number {
  let [low, high] = [from, to];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[middle]! <= limit) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
