/** How many points all combinations of so many levels are. */
export const combinations = (levels: readonly number[]): number =>
  levels.reduce((product, n) => product * n, 1);

/**
 * All combinations of the levels of factors, as numbers of levels from 0; the last factor changes fastest.
 * @param levels how many levels each factor has, 1 or more
 * @throws RangeError for more than `most` points
 */
export function fullFactorial(levels: readonly number[], most = 100_000): number[][] {
  const points = combinations(levels);
  if (points > most)
    throw new RangeError(`${levels.join(' x ')} levels are ${points} points; at most ${most}`);
  return Array.from({ length: points }, (_, point) => {
    const row = levels.map(() => 0);
    let rest = point;
    for (let factor = levels.length - 1; factor >= 0; factor--) {
      row[factor] = rest % levels[factor]!;
      rest = Math.floor(rest / levels[factor]!);
    }
    return row;
  });
}
