import { describe, expect, it } from 'vitest';
import type { EyePrescription, Prescription, PrescribedPrism } from './prescription.js';
import { questionPrescription } from './question-prescription.js';

// All limits are chosen, and stand with their reasons in question-prescription.ts.

function eye(sphereD: number, more: Partial<EyePrescription> = {}): EyePrescription {
  return { sphereD, cylinderD: 0, axisDeg: 180, addD: 0, prism: prism(0, 'in', 0, 'up'), ...more };
}

function prism(across: number, horizontal: 'in' | 'out', along: number, vertical: 'up' | 'down'): PrescribedPrism {
  return { horizontal: { amount: across, base: horizontal }, vertical: { amount: along, base: vertical } };
}

function kinds(R: EyePrescription, L: EyePrescription, more: Partial<Prescription> = {}): readonly string[] {
  const prescription = { R, L, vertexDistanceMm: null, lensKind: 'single-vision' as const, ...more };
  return questionPrescription(prescription).map(({ kind }) => kind);
}

describe('questionPrescription', () => {
  it('asks nothing about what is usual', () => {
    expect(kinds(eye(-1.25, { cylinderD: -0.5, axisDeg: 90 }), eye(-0.75))).toEqual([]);
    expect(kinds(eye(0.25), eye(-0.25))).toEqual([]);
    expect(kinds(eye(2, { addD: 2 }), eye(2.5, { addD: 2 }))).toEqual([]);
  });

  it('asks for a sign where both eyes are nearly alike without it', () => {
    expect(kinds(eye(-4.25), eye(4))).toEqual(['sign-perhaps-lost']);
    expect(kinds(eye(-4.25), eye(2))).toEqual(['eyes-differ']);
    expect(kinds(eye(-1), eye(1))).toEqual([]);
  });

  it('asks about eyes far apart in any main meridian', () => {
    expect(kinds(eye(-1), eye(-4))).toEqual(['eyes-differ']);
    expect(kinds(eye(0), eye(0, { cylinderD: -3, axisDeg: 180 }))).toEqual(['eyes-differ']);
    expect(kinds(eye(-1), eye(-3.75))).toEqual([]);
  });

  it('asks about mixed and large cylinders', () => {
    expect(kinds(eye(0, { cylinderD: 1, axisDeg: 90 }), eye(0, { cylinderD: -1, axisDeg: 180 }))).toEqual([
      'cylinder-signs-mixed',
    ]);
    expect(kinds(eye(6, { cylinderD: -10.25 }), eye(6, { cylinderD: -10 }), { vertexDistanceMm: 12 })).toEqual([
      'cylinder-large',
    ]);
  });

  it('asks about additions and prisms that do not go together', () => {
    expect(kinds(eye(0, { addD: 2 }), eye(0, { addD: 2.25 }))).toEqual(['additions-differ']);
    expect(kinds(eye(0, { prism: prism(2, 'in', 0, 'up') }), eye(0, { prism: prism(2, 'out', 0, 'up') }))).toEqual([
      'prisms-cancel',
    ]);
    expect(kinds(eye(0, { prism: prism(0, 'in', 1, 'up') }), eye(0, { prism: prism(0, 'in', 1, 'up') }))).toEqual([
      'prisms-cancel',
    ]);
    expect(kinds(eye(0, { prism: prism(2, 'in', 1, 'up') }), eye(0, { prism: prism(2, 'in', 1, 'down') }))).toEqual([]);
    expect(kinds(eye(0, { prism: prism(8, 'in', 7, 'up') }), eye(0))).toEqual(['prism-large']);
  });

  it('asks for the vertex distance of strong lenses', () => {
    expect(kinds(eye(-4.75), eye(-5))).toEqual(['vertex-distance-missing']);
    expect(kinds(eye(-4, { cylinderD: -1.25 }), eye(-4))).toEqual(['vertex-distance-missing']);
    expect(kinds(eye(-4.75), eye(-5), { vertexDistanceMm: 12 })).toEqual([]);
  });
});
