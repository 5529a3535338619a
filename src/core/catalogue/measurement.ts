import type { Side } from '../units/side.js';
import type { Sourced } from './source-status.js';

/** Every measurement of the catalogue. */
export type MeasurementId =
  | 'binocularPd'
  | 'monocularPd'
  | 'nearPd'
  | 'monocularNearPd'
  | 'lidAperture'
  | 'pupilDiameter'
  | 'irisDiameter'
  | 'headWidth'
  | 'templeWidth'
  | 'apicalRadius'
  | 'distanceBetweenRims10'
  | 'distanceBetweenRims15'
  | 'frontalAngle'
  | 'splayAngle'
  | 'crestHeight'
  | 'bridgeProjection'
  | 'lengthToBend'
  | 'lengthToTangent'
  | 'lengthOfDrop'
  | 'angleOfSide'
  | 'downwardAngleOfDrop'
  | 'inwardAngleOfDrop'
  | 'earPointDifference'
  | 'boxLensWidth'
  | 'boxLensHeight'
  | 'distanceBetweenLenses'
  | 'overallSideLength'
  | 'fittingHeight'
  | 'backVertexDistance'
  | 'pantoscopicAngle'
  | 'faceFormAngle';

/**
 * The places on the sheet where a hand reading is written, in the order of the sheet. R and L are the wearer's. Where the
 * camera measures the same, its estimate has the same name.
 */
export const READING_NAMES = [
  'pdFar',
  'monoPdR',
  'monoPdL',
  'pdNear',
  'monoNearR',
  'monoNearL',
  'apertureR',
  'apertureL',
  'pupilDiameterR',
  'pupilDiameterL',
  'irisDiameter',
  'headWidth',
  'templeWidth',
  'apicalRadius',
  'distanceBetweenRims10',
  'distanceBetweenRims15',
  'frontalAngleR',
  'frontalAngleL',
  'splayAngleR',
  'splayAngleL',
  'crestHeightR',
  'crestHeightL',
  'bridgeProjection',
  'lengthToBendR',
  'lengthToBendL',
  'lengthToTangentR',
  'lengthToTangentL',
  'lengthOfDropR',
  'lengthOfDropL',
  'angleOfSideR',
  'angleOfSideL',
  'downwardAngleOfDropR',
  'downwardAngleOfDropL',
  'inwardAngleOfDropR',
  'inwardAngleOfDropL',
  'earPointDifference',
  'boxLensWidth',
  'boxLensHeight',
  'distanceBetweenLenses',
  'overallSideLength',
  'fittingHeightR',
  'fittingHeightL',
  'backVertexDistanceR',
  'backVertexDistanceL',
  'pantoscopicAngle',
  'faceFormAngle',
] as const;

export type ReadingName = (typeof READING_NAMES)[number];

/** The blocks of the sheet: what is measured on the bare face, and with the chosen frame on it. */
export const MEASUREMENT_GROUPS = ['eyes', 'head', 'nose', 'sides', 'frame'] as const;

export type MeasurementGroup = (typeof MEASUREMENT_GROUPS)[number];

/** One place of a measurement; `side` is null where the measurement has none. */
export interface MeasurementField {
  readonly name: ReadingName;
  readonly side: Side | null;
}

export type MeasurementUnit = 'mm' | 'deg';

/** What a measurement is. What it is called and how it is taken is a matter of language; nothing here depends on a population or a standard. */
export interface MeasurementDefinition {
  readonly id: MeasurementId;
  /** which block of the sheet it belongs to */
  readonly group: MeasurementGroup;
  /** where its definition comes from */
  readonly definedBy: Sourced;
  /** R before L */
  readonly fields: readonly MeasurementField[];
  readonly unit: MeasurementUnit;
  /** whether zero and negative values can be: a crest below the lids' line, a bridge behind the lashes */
  readonly isSigned: boolean;
  /** read from a scale, or found by trying sizes until one fits */
  readonly takenBy: 'scale' | 'trial';
  /** step to which a hand reading is written, in `unit` */
  readonly resolution: number;
  /** whether it is taken in another way where the eyes never fixate together */
  readonly changesWithSquint: boolean;
}

/** Lower and upper bound, both still inside, in the unit of the measurement. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** How far hand and camera may lie apart before it matters, in the unit of the measurement. */
export interface Tolerance extends Sourced {
  readonly value: number;
}

/** What values may be expected: outside `soft` a person is asked to look again, outside `hard` the number is refused. */
export interface PlausibleRange extends Sourced {
  readonly soft: Range;
  readonly hard: Range;
}

/** Scatter of one trained reader who reads the same wearer again: one standard deviation, without the step of the scale. */
export interface Repeatability extends Sourced {
  readonly standardDeviation: number;
}

/** How right less left scatters among people, the mean taken as zero; in the unit of the measurement. */
export interface SideDifferenceSpread extends Sourced {
  readonly standardDeviation: number;
}

/** Mean and standard deviation among adults, in the unit of the measurement. */
export interface PopulationSpread extends Sourced {
  readonly mean: number;
  readonly standardDeviation: number;
}

/** A definition together with what is known of the outside world. */
export interface Measurement extends MeasurementDefinition {
  readonly tolerance: Tolerance;
  readonly plausible: PlausibleRange;
  readonly population: PopulationSpread;
  readonly repeatability: Repeatability;
  /** null where the measurement has no sides */
  readonly sideDifference: SideDifferenceSpread | null;
}
