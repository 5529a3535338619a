import { describe, expect, it } from 'vitest';

import { parseCanonicalMesh } from './canonical-mesh.js';
import {
  landmarkCount,
  leftEyeMeshPoints,
  lipsMeshPoints,
  mergedLandmarkIndices,
  meshPointCount,
  refinementOutputs,
  rightEyeMeshPoints,
} from './landmark-refinement.js';
import { installedParts } from './installed-parts.js';

const lists = { lips: lipsMeshPoints, 'right eye': rightEyeMeshPoints, 'left eye': leftEyeMeshPoints };

function canonicalVerticesCm() {
  const mesh = parseCanonicalMesh(installedParts().canonicalFace);
  if (!mesh.ok) throw new Error('The canonical face of the package cannot be read');
  return mesh.value.verticesCm;
}

describe('refinement lists', () => {
  it('have as many points as the model refines: 80 of the lips and 71 of each eye', () => {
    // The lengths of the model's outputs, 160 and 142 numbers, are checked against the model in landmark-bundle.test.ts.
    expect(lipsMeshPoints).toHaveLength(80);
    expect(rightEyeMeshPoints).toHaveLength(71);
    expect(leftEyeMeshPoints).toHaveLength(71);
  });

  it.each(Object.entries(lists))('name only points of the mesh for the %s, and none twice', (_name, list) => {
    expect(new Set(list).size).toBe(list.length);
    for (const point of list) {
      expect(Number.isInteger(point)).toBe(true);
      expect(point).toBeGreaterThanOrEqual(0);
      expect(point).toBeLessThan(meshPointCount);
    }
  });

  it('do not overlap', () => {
    const all = Object.values(lists).flat();
    expect(new Set(all).size).toBe(80 + 71 + 71);
  });

  it('mirror each other in the canonical face, point by point', () => {
    const vertices = canonicalVerticesCm();
    const toleranceCm = 1e-4; // The mesh is symmetric but for the rounding of its single-precision numbers.
    rightEyeMeshPoints.forEach((right, order) => {
      const [xr, yr, zr] = vertices[right] ?? [NaN, NaN, NaN];
      const [xl, yl, zl] = vertices[leftEyeMeshPoints[order] ?? -1] ?? [NaN, NaN, NaN];
      expect(xr).toBeLessThan(0);
      expect(Math.abs(xr + xl)).toBeLessThan(toleranceCm);
      expect(Math.abs(yr - yl)).toBeLessThan(toleranceCm);
      expect(Math.abs(zr - zl)).toBeLessThan(toleranceCm);
    });
  });
});

describe('merged landmarks', () => {
  /** The row of all outputs' numbers, each number a text that says where it comes from. */
  function labelledRow(): string[] {
    return refinementOutputs.flatMap(({ tensorName, length }) => {
      const axes = length === 3 * meshPointCount ? ['x', 'y', 'z'] : ['x', 'y'];
      return Array.from({ length }, (_, place) => {
        const point = Math.floor(place / axes.length);
        return `${tensorName} ${point} ${axes[place % axes.length]}`;
      });
    });
  }

  /** Where x, y, z of a landmark come from. */
  function originOf(landmark: number): (string | undefined)[] {
    const row = labelledRow();
    return mergedLandmarkIndices()
      .slice(3 * landmark, 3 * landmark + 3)
      .map((index) => row[index]);
  }

  it('are 478 points of three numbers out of a row of 1868', () => {
    expect(landmarkCount).toBe(478);
    expect(labelledRow()).toHaveLength(1868); // 3 x 468 + 2 x (80 + 71 + 71 + 5 + 5)
    expect(mergedLandmarkIndices()).toHaveLength(1434);
  });

  it('take an unrefined point from the mesh', () => {
    expect(originOf(1)).toEqual(['output_mesh_identity 1 x', 'output_mesh_identity 1 y', 'output_mesh_identity 1 z']);
  });

  it('take x and y of a refined point from the refinement, z from the mesh', () => {
    // First of each list, and the last of the wearer's left eye.
    expect(originOf(61)).toEqual(['output_lips 0 x', 'output_lips 0 y', 'output_mesh_identity 61 z']);
    expect(originOf(33)).toEqual(['output_left_eye 0 x', 'output_left_eye 0 y', 'output_mesh_identity 33 z']);
    expect(originOf(263)).toEqual(['output_right_eye 0 x', 'output_right_eye 0 y', 'output_mesh_identity 263 z']);
    expect(originOf(417)).toEqual(['output_right_eye 70 x', 'output_right_eye 70 y', 'output_mesh_identity 417 z']);
  });

  it('put the irises at the end, centre first, with the depth of the upper lid', () => {
    expect(originOf(468)).toEqual(['output_left_iris 0 x', 'output_left_iris 0 y', 'output_mesh_identity 159 z']);
    expect(originOf(472)).toEqual(['output_left_iris 4 x', 'output_left_iris 4 y', 'output_mesh_identity 159 z']);
    expect(originOf(473)).toEqual(['output_right_iris 0 x', 'output_right_iris 0 y', 'output_mesh_identity 386 z']);
    expect(originOf(477)).toEqual(['output_right_iris 4 x', 'output_right_iris 4 y', 'output_mesh_identity 386 z']);
  });

  it('use each refined number exactly once, and no x or y of the mesh besides', () => {
    const indices = mergedLandmarkIndices();
    const planar = indices.filter((_, place) => place % 3 !== 2);
    expect(new Set(planar).size).toBe(2 * landmarkCount);
    const refined = indices.filter((index) => index >= 3 * meshPointCount);
    expect(refined.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 464 }, (_, order) => 1404 + order));
  });
});
