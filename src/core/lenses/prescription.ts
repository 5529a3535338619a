/** Where the base of a prism points. */
export type HorizontalBase = 'in' | 'out';
export type VerticalBase = 'up' | 'down';

/** A prism before one eye, prism dioptres; zero for none. */
export interface PrescribedPrism {
  readonly horizontal: { readonly amount: number; readonly base: HorizontalBase };
  readonly vertical: { readonly amount: number; readonly base: VerticalBase };
}

/** A lens as it is written: dioptres, axis in degrees 1 to 180 in standard notation; cylinder of either sign. */
export interface LensPower {
  readonly sphereD: number;
  /** 0 for a spherical lens */
  readonly cylinderD: number;
  /** 180 where there is no cylinder */
  readonly axisDeg: number;
}

/** What is prescribed for one eye. */
export interface EyePrescription extends LensPower {
  readonly prism: PrescribedPrism;
  /** near addition, dioptres; 0 for none */
  readonly addD: number;
}

/** What is prescribed for the wearer. */
export interface Prescription {
  readonly R: EyePrescription;
  readonly L: EyePrescription;
  /** back vertex distance at which it was found, mm; null where it was not written */
  readonly vertexDistanceMm: number | null;
  readonly lensKind: LensKind;
}

export type LensKind = 'single-vision' | 'multifocal' | 'progressive';
