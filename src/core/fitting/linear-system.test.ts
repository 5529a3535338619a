import { describe, expect, it } from 'vitest';
import { invertSymmetric, logDeterminant, multiplyMatrixVector } from './linear-system.js';

describe('invertSymmetric', () => {
  it('inverts the Hilbert matrix of order 4 to its known whole numbers', () => {
    // Savage and Lukacs 1954; also (-1)^(i+j) (i+j-1) C(n+i-1, n-j) C(n+j-1, n-i) C(i+j-2, i-1)^2.
    const hilbert = [1, 2, 3, 4].map((i) => [1, 2, 3, 4].map((j) => 1 / (i + j - 1)));
    const inverse = invertSymmetric(hilbert);
    const wanted = [
      [16, -120, 240, -140],
      [-120, 1200, -2700, 1680],
      [240, -2700, 6480, -4200],
      [-140, 1680, -4200, 2800],
    ];
    wanted.forEach((row, i) => row.forEach((value, j) => expect(inverse?.[i]?.[j]).toBeCloseTo(value, 6)));
  });

  it('bears entries of very different units', () => {
    // Diagonal blocks: [[a, b], [b, c]] inverts to [[c, -b], [-b, a]] / (a c - b b).
    const inverse = invertSymmetric([
      [4e-12, 1e-6],
      [1e-6, 1],
    ]);
    expect(inverse![0]![0]! / (1 / 3e-12)).toBeCloseTo(1, 9);
    expect(inverse![0]![1]! / (-1e-6 / 3e-12)).toBeCloseTo(1, 9);
    expect(inverse![1]![1]! / (4 / 3)).toBeCloseTo(1, 9);
  });

  it.each([
    [
      'singular',
      [
        [1, 2],
        [2, 4],
      ],
    ],
    [
      'indefinite',
      [
        [1, 2],
        [2, 1],
      ],
    ],
    [
      'without anything known of one parameter',
      [
        [1, 0],
        [0, 0],
      ],
    ],
    ['not a number', [[NaN]]],
  ])('gives nothing for a matrix that is %s', (_, matrix) => {
    expect(invertSymmetric(matrix)).toBeNull();
  });
});

describe('multiplyMatrixVector', () => {
  it('multiplies rows with the column', () => {
    expect(
      multiplyMatrixVector(
        [
          [1, 2, 3],
          [4, 5, 6],
        ],
        [1, 0, -1],
      ),
    ).toEqual([-2, -2]);
  });
});

describe('logDeterminant', () => {
  it('is that of the Hilbert matrix of order 4, one over 6048000', () => {
    // Hilbert 1894 (from memory); also by the product formula of Cauchy matrices
    const hilbert = [1, 2, 3, 4].map((i) => [1, 2, 3, 4].map((j) => 1 / (i + j - 1)));
    expect(logDeterminant(hilbert)).toBeCloseTo(-Math.log(6_048_000), 9);
  });

  it('is minus infinity for what is not positive definite', () => {
    const indefinite = [
      [1, 2],
      [2, 1],
    ];
    expect(logDeterminant(indefinite)).toBe(Number.NEGATIVE_INFINITY);
  });
});
