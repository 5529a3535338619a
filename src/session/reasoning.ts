import type { Reconcile } from '../core/crosscheck/reconciliation.js';
import type { MeasureFace } from '../core/estimate/face-estimates.js';
import type { sheetEvidence } from './evidence.js';
import type { sheetMisfits } from './misfits.js';

/** What makes estimates of features, and findings of readings. Nobody needs it before there are any. */
export interface Reasoning {
  readonly measureFace: MeasureFace;
  readonly reconcile: Reconcile;
  /** what of a sheet goes into `reconcile`, and what follows for its rows */
  readonly sheetEvidence: typeof sheetEvidence;
  readonly sheetMisfits: typeof sheetMisfits;
}
