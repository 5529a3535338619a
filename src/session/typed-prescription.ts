import type { LensKind } from '../core/lenses/prescription.js';

/** What stands in the fields of the prescription, as typed; empty where nothing was. */
export interface TypedEye {
  readonly sphere: string;
  readonly cylinder: string;
  readonly axis: string;
  readonly prismHorizontal: string;
  readonly baseHorizontal: 'in' | 'out';
  readonly prismVertical: string;
  readonly baseVertical: 'up' | 'down';
  readonly add: string;
}

export interface TypedPrescription {
  readonly R: TypedEye;
  readonly L: TypedEye;
  /** at which the prescription was found, mm */
  readonly vertexDistance: string;
  readonly lensKind: LensKind;
  /** longest diameter of the lens shape from its boxed centre doubled ("effective diameter"), mm */
  readonly effectiveDiameter: string;
}

const NO_EYE: TypedEye = {
  sphere: '',
  cylinder: '',
  axis: '',
  prismHorizontal: '',
  baseHorizontal: 'in',
  prismVertical: '',
  baseVertical: 'up',
  add: '',
};

export const NO_PRESCRIPTION: TypedPrescription = {
  R: NO_EYE,
  L: NO_EYE,
  vertexDistance: '',
  lensKind: 'single-vision',
  effectiveDiameter: '',
};
