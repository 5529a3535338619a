/** Square matrices and systems of equations small enough to be solved densely. Matrices are arrays of rows. */

/** A system could not be solved: its matrix has no full rank to working precision. */
export interface IllConditioned {
  readonly kind: 'ill-conditioned';
}

/**
 * The inverse of a symmetric positive definite matrix, by Cholesky's decomposition; null where it is not positive definite.
 * Rows and columns are first scaled to a unit diagonal, so that mixed units (radians beside millimetres) do no harm.
 */
export function invertSymmetric(matrix: readonly (readonly number[])[]): number[][] | null {
  const n = matrix.length;
  const factor = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const diagonal = matrix[i]![i]!;
    if (!(diagonal > 0) || !Number.isFinite(diagonal)) return null;
    factor[i] = 1 / Math.sqrt(diagonal);
  }
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]! * factor[i]! * factor[j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * n + k]! * lower[j * n + k]!;
      if (i === j) {
        if (!(sum > 1e-13)) return null;
        lower[i * n + i] = Math.sqrt(sum);
      } else {
        lower[i * n + j] = sum / lower[j * n + j]!;
      }
    }
  }
  const inverseLower = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    inverseLower[j * n + j] = 1 / lower[j * n + j]!;
    for (let i = j + 1; i < n; i++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum -= lower[i * n + k]! * inverseLower[k * n + j]!;
      inverseLower[i * n + j] = sum / lower[i * n + i]!;
    }
  }
  const inverse: number[][] = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < n; k++) sum += inverseLower[k * n + i]! * inverseLower[k * n + j]!;
      const value = sum * factor[i]! * factor[j]!;
      inverse[i]![j] = value;
      inverse[j]![i] = value;
    }
  }
  return inverse;
}

/** Natural logarithm of the determinant of a symmetric positive definite matrix; minus infinity where it is not. */
export function logDeterminant(matrix: readonly (readonly number[])[]): number {
  const n = matrix.length;
  const lower = matrix.map((row) => [...row]);
  let total = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k++) sum -= lower[i]![k]! * lower[j]![k]!;
      if (i !== j) lower[i]![j] = sum / lower[j]![j]!;
      else if (!(sum > 0)) return Number.NEGATIVE_INFINITY;
      else {
        lower[i]![i] = Math.sqrt(sum);
        total += Math.log(sum);
      }
    }
  }
  return total;
}

/** Matrix times column vector. */
export function multiplyMatrixVector(matrix: readonly (readonly number[])[], vector: ArrayLike<number>): number[] {
  return matrix.map((row) => row.reduce((sum, value, i) => sum + value * vector[i]!, 0));
}
