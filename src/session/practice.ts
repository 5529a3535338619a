import type { MeasurementId } from '../core/catalogue/measurement.js';
import { MEASUREMENT_GROUPS, type MeasurementGroup } from '../core/catalogue/measurement.js';
import type { Gauge } from '../core/reading/gauge.js';

/** The standard that the prism of a mounted pair is held against. */
export type StandardId = 'ansi-z80.1' | 'iso-21987';

/** What belongs to the desk and not to a wearer: which rows are shown, how they are judged, with what they are read. */
export interface Practice {
  readonly hidden: readonly MeasurementId[];
  /** own tolerances in place of the catalogue's, in the unit of the measurement */
  readonly tolerances: { readonly [Id in MeasurementId]?: number };
  readonly gauges: readonly Gauge[];
  /** the gauge in use for a measurement, by its id; a plain rule where there is none */
  readonly gaugeInUse: { readonly [Id in MeasurementId]?: string };
  /** the blocks of the sheet in the order in which the practice measures; each once */
  readonly groupOrder: readonly MeasurementGroup[];
  readonly standard: StandardId;
}

/** Chosen: what a picture can check is shown from the start, and the rest is one choice away. */
export const DEFAULT_PRACTICE: Practice = {
  hidden: [],
  tolerances: {},
  gauges: [],
  gaugeInUse: {},
  groupOrder: MEASUREMENT_GROUPS,
  standard: 'ansi-z80.1',
};
