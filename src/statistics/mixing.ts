/** How far below zero rounding may take a pivot of a matrix that has none below zero. */
const ROUNDING = 1e-12;

/**
 * The lower triangular matrix L with L L' = `correlations` (Cholesky), which mixes independent draws of variance 1 into
 * draws of these correlations; null where the matrix has a negative eigenvalue, so that no draws can have them. Ones
 * beside the diagonal are allowed: such draws are the same.
 * Source: G. H. Golub and C. F. Van Loan, Matrix Computations, section on the Cholesky factorization (from memory).
 * @param correlations symmetric, ones on the diagonal
 */
export function mixingMatrix(correlations: readonly (readonly number[])[]): number[][] | null {
  const lower = correlations.map((row) => row.map(() => 0));
  for (const [i, row] of correlations.entries()) {
    for (let j = 0; j <= i; j++) {
      let left = row[j]!;
      for (let k = 0; k < j; k++) left -= lower[i]![k]! * lower[j]![k]!;
      if (j === i) {
        if (left < -ROUNDING) return null;
        // What rounding leaves of nothing is nothing.
        lower[i]![i] = left < ROUNDING ? 0 : Math.sqrt(left);
      } else if (lower[j]![j]! > 0) lower[i]![j] = left / lower[j]![j]!;
      else if (Math.abs(left) > Math.sqrt(ROUNDING)) return null;
    }
  }
  return lower;
}
