import type { Side } from '../units/side.js';
import type { Sourced } from './source-status.js';

/** Every measurement of the catalogue. */
export type MeasurementId =
  'binocularPd' | 'monocularPd' | 'nearPd' | 'lidAperture' | 'headWidth' | 'templeWidth' | 'irisDiameter';

/**
 * The places on the sheet where a hand reading is written, in the order in which they are read. R and L are the wearer's.
 * Each carries the name of the estimate that it is compared with.
 */
export type ReadingName =
  'pdFar' | 'monoPdR' | 'monoPdL' | 'pdNear' | 'apertureR' | 'apertureL' | 'headWidth' | 'templeWidth';

/** One place of a measurement; `side` is null where the measurement has none. */
export interface MeasurementField {
  readonly name: ReadingName;
  readonly side: Side | null;
}

export type MeasurementUnit = 'mm' | 'deg';

/** What a measurement is: the trade's words and the way it is taken. Nothing here depends on a population or a standard. */
export interface MeasurementDefinition {
  readonly id: MeasurementId;
  /** the trade's name */
  readonly name: string;
  /** the trade's short name for a narrow column */
  readonly shortName: string;
  /** which block of the sheet it belongs to */
  readonly group: 'eyes' | 'head';
  /** one sentence */
  readonly definition: string;
  /** where the definition comes from */
  readonly definedBy: Sourced;
  /** R before L; empty where only the camera measures */
  readonly fields: readonly MeasurementField[];
  readonly unit: MeasurementUnit;
  /** step to which a hand reading is written, in `unit` */
  readonly resolution: number;
  /** how it is taken by hand, one or two sentences */
  readonly howTaken: string;
  /** what may hurt the wearer or spoil the reading; null where there is nothing beyond the rules of the house */
  readonly caution: string | null;
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

/** From what difference between right and left on a person is asked to look again, in the unit of the measurement. */
export interface SideDifferenceLimit extends Sourced {
  readonly value: number;
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
  /** null where no hand reading is taken */
  readonly repeatability: Repeatability | null;
  /** null where the measurement has no sides */
  readonly sideDifference: SideDifferenceLimit | null;
}
