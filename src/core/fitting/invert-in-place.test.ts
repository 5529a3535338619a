import { describe, expect, it } from 'vitest';
import { invertInPlace } from './invert-in-place.js';
import { invertSymmetric } from './linear-system.js';

describe('the inverse in place', () => {
  it('is that of the Hilbert matrix of order 3', () => {
    // its inverse consists of whole numbers (Choi, Amer. Math. Monthly 90, 1983; from memory, and easily multiplied out)
    const matrix = Float64Array.from([1, 1 / 2, 1 / 3, 1 / 2, 1 / 3, 1 / 4, 1 / 3, 1 / 4, 1 / 5]);
    expect(invertInPlace(matrix, 3)).toBe(true);
    [9, -36, 30, -36, 192, -180, 30, -180, 180].forEach((value, i) => expect(matrix[i]).toBeCloseTo(value, 9));
  });

  it('is that of Cholesky’s decomposition, and leaves what is behind it alone', () => {
    const rows = [
      [4, 1, -0.5, 0.2],
      [1, 3, 0.3, 0],
      [-0.5, 0.3, 2, 0.7],
      [0.2, 0, 0.7, 5],
    ];
    const matrix = new Float64Array(20).fill(7);
    rows.flat().forEach((value, i) => (matrix[i] = value));
    expect(invertInPlace(matrix, 4)).toBe(true);
    invertSymmetric(rows)!
      .flat()
      .forEach((value, i) => expect(matrix[i]).toBeCloseTo(value, 12));
    expect([...matrix.subarray(16)]).toEqual([7, 7, 7, 7]);
  });

  it('is none where the matrix is not positive definite', () => {
    expect(invertInPlace(Float64Array.from([1, 2, 2, 1]), 2)).toBe(false);
    expect(invertInPlace(Float64Array.from([Number.NaN]), 1)).toBe(false);
  });
});
