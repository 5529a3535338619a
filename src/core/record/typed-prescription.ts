import type { HorizontalBase, LensKind, VerticalBase } from '../lenses/prescription.js';

/** What stands in the fields of the prescription for one eye, as typed; empty where nothing was. */
export interface TypedEye {
  readonly sphere: string;
  readonly cylinder: string;
  readonly axis: string;
  readonly prismHorizontal: string;
  /** empty until it is chosen: a base that nobody chose would be a guess */
  readonly baseHorizontal: HorizontalBase | '';
  readonly prismVertical: string;
  readonly baseVertical: VerticalBase | '';
  readonly add: string;
}

export interface TypedPrescription {
  readonly R: TypedEye;
  readonly L: TypedEye;
  /** at which the prescription was found, mm */
  readonly vertexDistance: string;
  readonly lensKind: LensKind;
  /** effective diameter of the chosen frame's lens shape, mm: twice the longest radius from the boxed centre to its edge */
  readonly effectiveDiameter: string;
}

const NO_EYE: TypedEye = {
  sphere: '',
  cylinder: '',
  axis: '',
  prismHorizontal: '',
  baseHorizontal: '',
  prismVertical: '',
  baseVertical: '',
  add: '',
};

export const NO_PRESCRIPTION: TypedPrescription = {
  R: NO_EYE,
  L: NO_EYE,
  vertexDistance: '',
  lensKind: 'single-vision',
  effectiveDiameter: '',
};
