import { describe, expect, it } from 'vitest';

import canonicalFace from './canonical-face.json' with { type: 'json' };
import { deriveCanonicalFace, readCanonicalFaceFile } from './derive-canonical-face.js';

/** Vertex of this number; throws where there is none. */
function vertexMm(index: number): [number, number, number] {
  const [x, y, z] = canonicalFace.verticesMm[index] ?? [];
  if (x === undefined || y === undefined || z === undefined) throw new Error(`No vertex ${index}`);
  return [x, y, z];
}

describe('canonical face', () => {
  it('is the same to the byte when it is derived again', () => {
    expect(deriveCanonicalFace()).toBe(readCanonicalFaceFile());
  });

  it('has the 468 vertices of the mesh without irises', () => {
    expect(canonicalFace.verticesMm).toHaveLength(468);
    for (const vertex of canonicalFace.verticesMm) expect(vertex).toHaveLength(3);
  });

  it("has x to the wearer's left, y up and z forward", () => {
    // Numbers of the landmarks: 33 and 263 outer canthi R and L, 152 chin, 10 top of the forehead, 1 tip of the nose,
    // 234 and 454 before the ears (MediaPipe face mesh numbering).
    expect(vertexMm(33)[0]).toBeLessThan(-30);
    expect(vertexMm(263)[0]).toBeGreaterThan(30);
    expect(vertexMm(10)[1]).toBeGreaterThan(vertexMm(152)[1] + 100);
    expect(vertexMm(1)[2]).toBeGreaterThan(vertexMm(234)[2] + 50);
  });

  it('is symmetric about x = 0 and has its midline there', () => {
    const toleranceMm = 0.0005; // Rounding of the source's single-precision centimetres.
    for (const index of [1, 6, 8, 9, 10, 151, 152, 168]) expect(vertexMm(index)[0]).toBeCloseTo(0, 4);
    for (const [right, left] of [
      [33, 263],
      [133, 362],
      [159, 386],
      [234, 454],
    ] as const) {
      const [xr, yr, zr] = vertexMm(right);
      const [xl, yl, zl] = vertexMm(left);
      expect(Math.abs(xr + xl)).toBeLessThan(toleranceMm);
      expect(Math.abs(yr - yl)).toBeLessThan(toleranceMm);
      expect(Math.abs(zr - zl)).toBeLessThan(toleranceMm);
    }
  });

  it('has the size of a grown face', () => {
    // Outer-canthal width of adults: about 80 to 105 mm in published anthropometry (from memory); catches cm for mm.
    const outerCanthalWidthMm = vertexMm(263)[0] - vertexMm(33)[0];
    expect(outerCanthalWidthMm).toBeGreaterThan(75);
    expect(outerCanthalWidthMm).toBeLessThan(110);
  });
});
