/**
 * The long-run chance of each number 0 to `most` of a birth and death process: up from n at rate `birth(n)`, down at
 * rate `death(n)`. Standard; e.g. Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, chapter 3.
 */
export function birthDeath(
  birth: (n: number) => number,
  death: (n: number) => number,
  most: number,
): number[] {
  const weights = [1];
  for (let n = 1; n <= most; n++) weights.push((weights[n - 1]! * birth(n - 1)) / death(n));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

/** The mean of `of(n)` under the chances `p` of n. */
export const meanOver = (p: readonly number[], of: (n: number) => number): number =>
  p.reduce((sum, chance, n) => sum + chance * of(n), 0);
