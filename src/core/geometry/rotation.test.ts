import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toCamera } from './pose.js';
import { rotationFromAxes, rotationFromVector, vectorFromRotation } from './rotation.js';
import { cross, dot, multiply, multiplyVector, norm, transpose, type Matrix3, type Vector3 } from './vector.js';

function expectVector(got: Vector3, wanted: Vector3, digits = 12): void {
  got.forEach((value, i) => expect(value).toBeCloseTo(wanted[i]!, digits));
}

const coordinate = fc.double({ min: -1, max: 1, noNaN: true });
const direction = fc.tuple(coordinate, coordinate, coordinate).filter((v) => norm(v) > 0.1);

describe('rotationFromVector', () => {
  it('turns x to y by a quarter about z, and permutes the axes by a third about their diagonal', () => {
    expectVector(multiplyVector(rotationFromVector([0, 0, Math.PI / 2]), [1, 0, 0]), [0, 1, 0]);
    const third = (2 * Math.PI) / 3 / Math.sqrt(3);
    expectVector(multiplyVector(rotationFromVector([third, third, third]), [1, 2, 3]), [3, 1, 2]);
  });

  it('is the identity for no rotation', () => {
    expect(rotationFromVector([0, 0, 0])).toEqual([
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ]);
  });

  it('is the exponential of the cross product with the vector', () => {
    // exp(V) = I + V + V V / 2! + ... column by column; the vector is that of view 1 of left_intrinsics.yml of opencv-doc 4.6.0.
    const v: Vector3 = [0.16866673097722978, 0.2756719538368968, 0.013463666677617407];
    const wanted = [0, 1, 2].map((axis) => {
      const unit: Vector3 = [axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0];
      let term: Vector3 = unit;
      const sum: [number, number, number] = [...unit];
      for (let n = 1; n < 20; n++) {
        const next = cross(v, term);
        term = [next[0] / n, next[1] / n, next[2] / n];
        sum.forEach((value, i) => (sum[i] = value + term[i]!));
      }
      return sum;
    });
    const matrix = rotationFromVector(v);
    wanted.forEach((column, axis) => expectVector([matrix[0][axis]!, matrix[1][axis]!, matrix[2][axis]!], column));
  });
});

describe('vectorFromRotation', () => {
  it('comes back to the rotation vector, from hardly any angle to nearly half a turn', () => {
    fc.assert(
      fc.property(direction, fc.double({ min: 1e-9, max: 3.1, noNaN: true }), (axis, angleRad) => {
        const length = norm(axis);
        const v: Vector3 = [
          (axis[0] / length) * angleRad,
          (axis[1] / length) * angleRad,
          (axis[2] / length) * angleRad,
        ];
        expectVector(vectorFromRotation(rotationFromVector(v)), v, 7);
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it.each<readonly [string, Matrix3, Vector3]>([
    [
      'x',
      [
        [1, 0, 0],
        [0, -1, 0],
        [0, 0, -1],
      ],
      [Math.PI, 0, 0],
    ],
    [
      'z',
      [
        [-1, 0, 0],
        [0, -1, 0],
        [0, 0, 1],
      ],
      [0, 0, Math.PI],
    ],
    // 2 n n^T - 1 with n = (1, 1, 0) / sqrt 2
    [
      'the diagonal of x and y',
      [
        [0, 1, 0],
        [1, 0, 0],
        [0, 0, -1],
      ],
      [Math.PI / Math.SQRT2, Math.PI / Math.SQRT2, 0],
    ],
  ])('finds the axis of half a turn about %s', (_, matrix, wanted) => {
    const found = vectorFromRotation(matrix);
    // Half a turn has two vectors of opposite sign.
    const sign = Math.sign(dot(found, wanted));
    expectVector([sign * found[0], sign * found[1], sign * found[2]], wanted, 9);
  });
});

describe('rotationFromAxes', () => {
  it('is a right-handed frame with z along the axis and x in the plane of the hint', () => {
    fc.assert(
      fc.property(direction, direction, (xHint, zAxis) => {
        fc.pre(norm(cross(xHint, zAxis)) > 0.05);
        const r = rotationFromAxes(xHint, zAxis);
        const product = multiply(r, transpose(r));
        product.forEach((row, i) => row.forEach((value, k) => expect(value).toBeCloseTo(i === k ? 1 : 0, 10)));
        const [x, y, z] = transpose(r);
        expectVector(cross(x, y), z, 10);
        expect(dot(z, zAxis)).toBeCloseTo(norm(zAxis), 10);
        expect(dot(x, xHint)).toBeGreaterThan(0);
        expect(dot(y, xHint)).toBeCloseTo(0, 10);
      }),
      { seed: 6, numRuns: 100 },
    );
  });
});

describe('toCamera', () => {
  it('turns, then shifts', () => {
    const pose = { rotation: rotationFromVector([0, 0, Math.PI / 2]), translationMm: [10, 20, 500] as const };
    expectVector(toCamera(pose, [3, 0, 1]), [10, 23, 501]);
  });
});
