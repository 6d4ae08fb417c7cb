/**
 * Points in the unit cube, each of whose coordinates falls once into each of as many equal parts of its range, at random
 * within it. M. D. McKay, R. J. Beckman and W. J. Conover (1979), A comparison of three methods for selecting values of input
 * variables in the analysis of output from a computer code, Technometrics 21, 239-245.
 * @param uniform numbers in [0, 1)
 * @returns by point and factor, in [0, 1)
 */
export function latinHypercube(points: number, factors: number, uniform: () => number): number[][] {
  const made = Array.from({ length: points }, () => Array.from({ length: factors }, () => 0));
  for (let factor = 0; factor < factors; factor++) {
    const cells = Array.from({ length: points }, (_, i) => i);
    for (let i = points - 1; i > 0; i--) {
      const j = Math.floor(uniform() * (i + 1));
      [cells[i], cells[j]] = [cells[j]!, cells[i]!];
    }
    for (const [point, cell] of cells.entries()) made[point]![factor] = (cell + uniform()) / points;
  }
  return made;
}
