/**
 * Turns the first `n` rows and columns of a symmetric positive definite matrix, row after row in `matrix`, into its inverse, without
 * making anything new: Gauss and Jordan's sweeps, each pivot a diagonal element. False where a pivot is not positive, and the matrix
 * is spoilt. Not scaled beforehand: for matrices whose diagonal is of about one size.
 */
export function invertInPlace(matrix: Float64Array, n: number): boolean {
  for (let k = 0; k < n; k += 1) {
    const rowK = k * n;
    const pivot = matrix[rowK + k]!;
    if (!(pivot > 0)) return false;
    const inverse = 1 / pivot;
    matrix[rowK + k] = 1;
    for (let j = 0; j < n; j += 1) matrix[rowK + j]! *= inverse;
    for (let i = 0; i < n; i += 1) {
      if (i === k) continue;
      const rowI = i * n;
      const share = matrix[rowI + k]!;
      if (share === 0) continue;
      matrix[rowI + k] = 0;
      for (let j = 0; j < n; j += 1) matrix[rowI + j]! -= share * matrix[rowK + j]!;
    }
  }
  return true;
}
